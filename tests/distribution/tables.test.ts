import { describe, expect, it } from "vitest";
import { DUCT_AREA_DEFAULTS, defaultDuctAreas, defaultOutsideAreaShare } from "#lib/distribution/duct-area.ts";
import { effectiveRValue } from "#lib/distribution/effective-r-value.ts";
import { equipmentAirflow } from "#lib/distribution/equipment-airflow.ts";
import { housePressure } from "#lib/distribution/house-pressure.ts";
import { REGAIN, regainFactorOf } from "#lib/distribution/regain.ts";
import { unbalancedInfiltration } from "#lib/distribution/unbalanced-infiltration.ts";
import { PLACE_KINDS } from "#lib/job/place.ts";
import { expectClose } from "#tests/expect-close.ts";

const exact = { relativeTolerance: 1e-12, reason: "exact arithmetic" } as const;

describe("regain by place [practice: form of ashrae-152, from memory]", () => {
  it.each([
    ["outside", "none", 0],
    ["attic", "none", 0.1],
    ["garage", "none", 0.1],
    ["vented-crawlspace", "none", 0.5],
    ["vented-crawlspace", "floor-or-ceiling", 0.15],
    ["unvented-crawlspace", "none", 0.6],
    ["unvented-crawlspace", "walls", 0.75],
    ["basement", "none", 0.5],
    ["basement", "floor-or-ceiling", 0.3],
    ["basement", "walls", 0.75],
    ["conditioned", "none", 1],
  ] as const)("%s, insulated: %s", (placeKind, insulation, expected) => {
    expect(regainFactorOf({ placeKind, insulation })).toBe(expected);
  });

  it("covers every place, between its limits, with a source", () => {
    for (const kind of PLACE_KINDS) {
      for (const entry of Object.values(REGAIN[kind])) {
        expect(entry.value).toBeGreaterThanOrEqual(entry.low ?? Number.NaN);
        expect(entry.value).toBeLessThanOrEqual(entry.high ?? Number.NaN);
        expect(entry.source.sourceId).toBe("practice");
      }
    }
  });
});

describe("duct surface and insulation where nobody measured [practice]", () => {
  it("is 0.27 of the floor for the supply, 0.05 a return grille up to 0.25 for the return", () => {
    expectClose({
      actual: defaultDuctAreas({ floorAreaFt2: 2000, returnsCount: 1 }).supplyAreaFt2,
      expected: 540,
      ...exact,
    });
    expectClose({
      actual: defaultDuctAreas({ floorAreaFt2: 2000, returnsCount: 3 }).returnAreaFt2,
      expected: 300,
      ...exact,
    });
    expectClose({
      actual: defaultDuctAreas({ floorAreaFt2: 2000, returnsCount: 9 }).returnAreaFt2,
      expected: 500,
      ...exact,
    });
    expect(() => defaultDuctAreas({ floorAreaFt2: 0, returnsCount: 1 })).toThrow("Floor area");
    expect(DUCT_AREA_DEFAULTS.supplyPerFloorArea.value).toBe(0.27);
  });

  it("lies outside the rooms in one storey, 65 % in more", () => {
    expect(defaultOutsideAreaShare(1)).toBe(1);
    expect(defaultOutsideAreaShare(2)).toBe(0.65);
    expect(defaultOutsideAreaShare(3)).toBe(0.65);
  });

  it("resists with its air films, bare metal with 1.0, more when buried, never with 0", () => {
    expectClose({ actual: effectiveRValue({ insulationRValue: 4.2 }), expected: 4.9, ...exact });
    expect(effectiveRValue({ insulationRValue: 0 })).toBe(1);
    expect(effectiveRValue({ insulationRValue: 8, isBuried: true })).toBeGreaterThan(
      effectiveRValue({ insulationRValue: 8 }),
    );
    expect(() => effectiveRValue({ insulationRValue: -1 })).toThrow("Duct insulation");
    expect(() => effectiveRValue({ insulationRValue: Number.NaN })).toThrow("Duct insulation");
  });
});

describe("equipment and airflow [nrel-56354, from memory]", () => {
  it.each(["heating", "cooling"] as const)("is at its rating at 400 cfm a ton, %s", (mode) => {
    const rated = equipmentAirflow({ mode, fanFlowCfm: 1200, ratedCapacityBtuPerH: 36000 });
    expectClose({
      actual: rated.capacityFactor,
      expected: 1,
      relativeTolerance: 1e-6,
      reason: "coefficients to 9 figures",
    });
    expectClose({
      actual: rated.efficiencyFactor,
      expected: 1,
      relativeTolerance: 1e-6,
      reason: "coefficients to 9 figures",
    });
    const starved = equipmentAirflow({ mode, fanFlowCfm: 840, ratedCapacityBtuPerH: 36000 });
    expect(starved.capacityFactor).toBeGreaterThan(0.88);
    expect(starved.capacityFactor).toBeLessThan(0.97);
    expect(starved.efficiencyFactor).toBeGreaterThan(0.82);
    expect(starved.efficiencyFactor).toBeLessThan(0.97);
  });

  it("rises with the flow up to the rating and is held beyond what the curves were fitted for", () => {
    for (const mode of ["heating", "cooling"] as const) {
      const at = (fanFlowCfm: number) => equipmentAirflow({ mode, fanFlowCfm, ratedCapacityBtuPerH: 36000 });
      for (let flow = 600; flow < 1200; flow += 60) {
        expect(at(flow + 60).capacityFactor).toBeGreaterThan(at(flow).capacityFactor);
        expect(at(flow + 60).efficiencyFactor).toBeGreaterThan(at(flow).efficiencyFactor);
      }
      expect(at(200)).toEqual(at(600));
      expect(at(4000)).toEqual(at(1800));
    }
    expect(() => equipmentAirflow({ mode: "heating", fanFlowCfm: 0, ratedCapacityBtuPerH: 36000 })).toThrow("Fan flow");
  });
});

describe("house pressure and infiltration from unequal leaks", () => {
  const envelope = { envelopeCoefficient: 1750 / 50 ** 0.65, envelopeExponent: 0.65 };
  const at = (supplyLeakageCfm: number, returnLeakageCfm: number) =>
    housePressure({ supplyLeakageCfm, returnLeakageCfm, ...envelope }).housePressurePa;

  it("pulls the house below outside when more supply air leaks out, pushes it above when more return air leaks in", () => {
    expect(at(120, 40)).toBeLessThan(0);
    expectClose({ actual: at(40, 120), expected: -at(120, 40), ...exact });
    expect(at(80, 80)).toBe(0);
  });

  it("asks of the shell exactly what the ducts do not balance: 1,750 cfm at 50 Pa [derived]", () => {
    expectClose({ actual: at(1750, 0), expected: -50, relativeTolerance: 1e-9, reason: "power law both ways" });
    // 80 cfm: 50·(80/1750)^(1/0.65)
    expectClose({ actual: at(120, 40), expected: -0.43402, relativeTolerance: 1e-4, reason: "by hand to 5 figures" });
    expect(() =>
      housePressure({ supplyLeakageCfm: 1, returnLeakageCfm: 0, envelopeCoefficient: 0, envelopeExponent: 0.65 }),
    ).toThrow("Shell");
  });

  it("moves as much air in as out, ducts and shell together, whichever side leaks more [palmiter-bond: mass balance]", () => {
    for (const naturalInfiltrationCfm of [0, 15, 60, 200]) {
      for (const [supplyLeakageCfm, returnLeakageCfm] of [
        [120, 80],
        [80, 120],
        [300, 10],
        [10, 300],
        [50, 50],
      ] as const) {
        const { infiltrationCfm, exfiltrationCfm } = unbalancedInfiltration({
          naturalInfiltrationCfm,
          supplyLeakageCfm,
          returnLeakageCfm,
        });
        const balance = infiltrationCfm + returnLeakageCfm - exfiltrationCfm - supplyLeakageCfm;
        expectClose({ actual: balance, expected: 0, scale: 300, ...exact });
        expect(Math.min(infiltrationCfm, exfiltrationCfm)).toBeGreaterThanOrEqual(0);
      }
    }
  });
});
