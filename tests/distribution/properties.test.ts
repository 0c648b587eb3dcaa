import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { deliveredWithRegain } from "#lib/distribution/air-path.ts";
import { deliveryEffectivenessCooling } from "#lib/distribution/delivery-effectiveness-cooling.ts";
import { deliveryEffectivenessHeating } from "#lib/distribution/delivery-effectiveness-heating.ts";
import { distributionEfficiency } from "#lib/distribution/distribution-efficiency.ts";
import { explainAirPath, REGISTER_COLDER_THAN_ROOM, RETURN_LEAK_HELPS } from "#lib/distribution/explanations.ts";
import { thermalRegain } from "#lib/distribution/thermal-regain.ts";
import { expectClose } from "#tests/expect-close.ts";
import { CONFIGURATIONS, follow } from "./configurations.ts";
import type { MarchedPlace, MarchedSystem } from "./marching-balance.ts";

const SLACK = 1e-9;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Houses as they are, one place a side; zones no warmer than the rooms. */
const heatingDucts = fc.record({
  fanFlowCfm: between(400, 2000),
  supplyShare: between(0, 0.4),
  returnShare: between(0, 0.4),
  supplyAreaFt2: between(0, 800),
  returnAreaFt2: between(0, 400),
  supplyRValue: between(1, 12),
  returnRValue: between(1, 12),
  indoorTemperatureF: between(64, 76),
  supplyZoneTemperatureF: between(-20, 64),
  returnZoneTemperatureF: between(-20, 64),
  capacityBtuPerH: between(4000, 120000),
  supplyRegain: between(0, 1),
  returnRegain: between(0, 1),
});
type Drawn = typeof heatingDucts extends fc.Arbitrary<infer Value> ? Value : never;

function delivered(drawn: Drawn, supplyShare = drawn.supplyShare, returnShare = drawn.returnShare) {
  const delivery = deliveryEffectivenessHeating({
    ...drawn,
    supplyLeakageCfm: supplyShare * drawn.fanFlowCfm,
    returnLeakageCfm: returnShare * drawn.fanFlowCfm,
  });
  return { ...delivery, withRegain: thermalRegain({ ...delivery, ...drawn }).deliveryEffectiveness };
}

describe("delivery effectiveness in heating, register air warmer than the room", () => {
  it("never rises with more supply or return leakage, nor does what is left after regain", () => {
    let seen = 0;
    fc.assert(
      fc.property(heatingDucts, between(0, 0.3), between(0, 0.3), (drawn, moreSupply, moreReturn) => {
        const before = delivered(drawn);
        const leakierSupply = delivered(drawn, drawn.supplyShare + moreSupply);
        const leakierReturn = delivered(drawn, drawn.supplyShare, drawn.returnShare + moreReturn);
        fc.pre(before.registerTemperatureF >= drawn.indoorTemperatureF);
        seen += 1;
        expect(leakierSupply.deliveryEffectiveness).toBeLessThanOrEqual(before.deliveryEffectiveness + SLACK);
        expect(leakierReturn.deliveryEffectiveness).toBeLessThanOrEqual(before.deliveryEffectiveness + SLACK);
        expect(leakierSupply.withRegain).toBeLessThanOrEqual(before.withRegain + SLACK);
        expect(leakierReturn.withRegain).toBeLessThanOrEqual(before.withRegain + SLACK);
      }),
      { numRuns: 500 },
    );
    expect(seen).toBeGreaterThan(100);
  });

  it("is 1 without leaks and with infinite R, and never above 1 where all zones are colder than the rooms", () => {
    fc.assert(
      fc.property(heatingDucts, (drawn) => {
        const tight = delivered({ ...drawn, supplyRValue: 1e15, returnRValue: 1e15 }, 0, 0);
        expectClose({
          actual: tight.deliveryEffectiveness,
          expected: 1,
          relativeTolerance: 1e-9,
          reason: "R of 1e15 for infinity",
        });
        const { deliveryEffectiveness, withRegain, registerTemperatureF } = delivered(drawn);
        if (registerTemperatureF < drawn.indoorTemperatureF) return;
        expect(withRegain).toBeGreaterThanOrEqual(deliveryEffectiveness - SLACK);
        expect(withRegain).toBeLessThanOrEqual(1 + SLACK);
      }),
      { numRuns: 500 },
    );
  });
});

const place: fc.Arbitrary<MarchedPlace> = fc.record({
  temperatureF: between(-10, 60),
  humidityRatio: between(0.001, 0.003),
  regain: between(0, 1),
  supplyConductance: between(0, 120),
  returnConductance: between(0, 60),
  supplyLeakageCfm: between(0, 90),
  returnLeakageCfm: between(0, 90),
});
const winter = CONFIGURATIONS["heating, all in the attic"]!;
const summer = CONFIGURATIONS["cooling, all in the attic"]!;
const severalPlaces = fc.array(place, { minLength: 1, maxLength: 4 });

/** The same house with one leak smaller. */
function sealed(system: MarchedSystem, index: number, side: "supplyLeakageCfm" | "returnLeakageCfm", left: number) {
  const places = system.places.map((each, p) => (p === index ? { ...each, [side]: left * each[side] } : each));
  return { ...system, places };
}

describe("runs in several places", () => {
  it("sealing a supply leak anywhere never lowers what arrives with regain while the register is warmer than the room", () => {
    let seen = 0;
    fc.assert(
      fc.property(severalPlaces, fc.nat(), between(0, 1), (places, pick, left) => {
        const system = { ...winter, places };
        const path = follow(system);
        fc.pre(path.registerF >= system.indoorTemperatureF);
        seen += 1;
        const after = follow(sealed(system, pick % places.length, "supplyLeakageCfm", left));
        expect(deliveredWithRegain(after)).toBeGreaterThanOrEqual(deliveredWithRegain(path) - 1e-6);
      }),
      { numRuns: 300 },
    );
    expect(seen).toBeGreaterThan(50);
  });

  it("sealing a return leak never lowers it where its place is colder than the air in the return", () => {
    let seen = 0;
    fc.assert(
      fc.property(severalPlaces, fc.nat(), between(0, 1), (places, pick, left) => {
        const system = { ...winter, places };
        const path = follow(system);
        const index = pick % places.length;
        fc.pre(places[index]!.temperatureF <= path.returnDuctEndF);
        seen += 1;
        const after = follow(sealed(system, index, "returnLeakageCfm", left));
        expect(deliveredWithRegain(after)).toBeGreaterThanOrEqual(deliveredWithRegain(path) - 1e-6);
      }),
      { numRuns: 300 },
    );
    expect(seen).toBeGreaterThan(50);
  });

  it("does not care for the order of the places, nor whether a place is split in two", () => {
    fc.assert(
      fc.property(severalPlaces, between(0.05, 0.95), fc.boolean(), (places, part, isCooling) => {
        const system = { ...(isCooling ? summer : winter), places };
        const [first, ...rest] = places as [MarchedPlace, ...MarchedPlace[]];
        const portion = (share: number): MarchedPlace => ({
          ...first,
          supplyConductance: share * first.supplyConductance,
          returnConductance: share * first.returnConductance,
          supplyLeakageCfm: share * first.supplyLeakageCfm,
          returnLeakageCfm: share * first.returnLeakageCfm,
        });
        const expected = follow(system).usefulBtuPerH;
        const same = {
          expected,
          scale: system.capacityBtuPerH,
          relativeTolerance: 1e-11,
          reason: "sums in another order",
        };
        expectClose({ actual: follow({ ...system, places: [...places].reverse() }).usefulBtuPerH, ...same });
        const split = { ...system, places: [portion(part), ...rest, portion(1 - part)] };
        expectClose({ actual: follow(split).usefulBtuPerH, ...same });
      }),
      { numRuns: 200 },
    );
  });

  it("loses nothing with all ducts in the rooms, nor with regain 1 and the zone as the rooms", () => {
    fc.assert(
      fc.property(severalPlaces, fc.boolean(), (places, isCooling) => {
        const base = isCooling ? summer : winter;
        const system: MarchedSystem = {
          ...base,
          extraInfiltrationCfm: 0,
          places: places.map((each) => ({
            ...each,
            regain: 1,
            temperatureF: base.indoorTemperatureF,
            humidityRatio: base.indoorHumidityRatio,
          })),
        };
        const { usefulBtuPerH } = follow(system);
        expectClose({
          actual: usefulBtuPerH,
          expected: system.capacityBtuPerH,
          relativeTolerance: 1e-11,
          reason: "every loss comes back",
        });
      }),
      { numRuns: 200 },
    );
    const inside = { deliveryEffectiveness: 1, outsideAreaShare: 0, regain: 1 };
    expect(distributionEfficiency(inside).distributionEfficiency).toBe(1);
  });
});

describe("exceptions in physics, and how the product explains them", () => {
  it("a tiny heat pump on a bitter day: the register is colder than the room, so a supply leak seems to help", () => {
    const bitter = CONFIGURATIONS["heating, a small heat pump on a bitter day"]!;
    const path = follow(bitter);
    expect(path.deliveredBtuPerH).toBeLessThan(0);
    expect(path.registerF).toBeLessThan(bitter.indoorTemperatureF);
    const after = follow(sealed(bitter, 0, "supplyLeakageCfm", 0));
    expect(after.deliveredBtuPerH).toBeLessThan(path.deliveredBtuPerH);
    const notes = explainAirPath({ mode: "heating", path, indoorTemperatureF: bitter.indoorTemperatureF });
    expect(notes).toEqual([REGISTER_COLDER_THAN_ROOM]);
  });

  it("return-only sealing under a warm crawlspace: the leak brought in warmth, so sealing lowers what arrives", () => {
    const warm = CONFIGURATIONS["heating, only the return leaks, from a crawlspace warmer than the rooms"]!;
    const path = follow(warm);
    expect(path.deliveredBtuPerH).toBeGreaterThan(warm.capacityBtuPerH);
    const after = follow(sealed(warm, 0, "returnLeakageCfm", 0));
    expect(deliveredWithRegain(after)).toBeLessThan(deliveredWithRegain(path));
    const notes = explainAirPath({ mode: "heating", path, indoorTemperatureF: warm.indoorTemperatureF });
    expect(notes).toEqual([RETURN_LEAK_HELPS.heating]);
  });

  it("a cool, dry crawlspace in summer: the same in cooling", () => {
    const cool: MarchedSystem = {
      ...summer,
      places: [{ ...summer.places[0]!, temperatureF: 66, humidityRatio: 0.009, regain: 0.5 }],
    };
    const path = follow(cool);
    const after = follow(sealed(cool, 0, "returnLeakageCfm", 0));
    expect(deliveredWithRegain(after)).toBeLessThan(deliveredWithRegain(path));
    const notes = explainAirPath({ mode: "cooling", path, indoorTemperatureF: cool.indoorTemperatureF });
    expect(notes).toEqual([RETURN_LEAK_HELPS.cooling]);
  });

  it("an ordinary house needs no explanation", () => {
    for (const mode of ["heating", "cooling"] as const) {
      const system = CONFIGURATIONS[`${mode}, all in the attic`]!;
      const path = follow(system);
      expect(explainAirPath({ mode, path, indoorTemperatureF: system.indoorTemperatureF })).toEqual([]);
    }
  });

  it("carries the same notes in the closed form of one place", () => {
    const drawn = { ...fc.sample(heatingDucts, { numRuns: 1, seed: 7 })[0]!, supplyShare: 0.1, returnShare: 0.1 };
    const codes = (change: Partial<Drawn>) => delivered({ ...drawn, ...change }).notes.map((note) => note.code);
    const ordinary = {
      supplyZoneTemperatureF: 40,
      returnZoneTemperatureF: 40,
      capacityBtuPerH: 1e5,
      supplyAreaFt2: 200,
    };
    expect(codes(ordinary)).toEqual([]);
    expect(codes({ ...ordinary, returnZoneTemperatureF: 85 })).toEqual(["return-leak-brings-warmth"]);
    expect(codes({ ...ordinary, supplyZoneTemperatureF: -20, supplyAreaFt2: 800, capacityBtuPerH: 4000 })).toEqual([
      "register-colder-than-room",
    ]);
  });
});

describe("delivery effectiveness in cooling", () => {
  const house = {
    fanFlowCfm: 1200,
    supplyLeakageCfm: 120,
    returnLeakageCfm: 60,
    supplyAreaFt2: 540,
    returnAreaFt2: 150,
    supplyRValue: 4.9,
    returnRValue: 4.9,
    indoorTemperatureF: 75,
    supplyZoneTemperatureF: 120,
    returnZoneTemperatureF: 120,
    indoorEnthalpyBtuPerLb: 28.18,
    returnZoneEnthalpyBtuPerLb: 44.35,
    capacityBtuPerH: 36000,
  };

  it("falls with leaks on either side of a hot attic", () => {
    fc.assert(
      fc.property(between(0, 400), between(0, 400), between(0, 200), (supply, returned, more) => {
        const at = (supplyLeakageCfm: number, returnLeakageCfm: number) =>
          deliveryEffectivenessCooling({ ...house, supplyLeakageCfm, returnLeakageCfm });
        const before = at(supply, returned);
        fc.pre(before.deliveryEffectiveness >= 0);
        expect(at(supply + more, returned).deliveryEffectiveness).toBeLessThanOrEqual(
          before.deliveryEffectiveness + SLACK,
        );
        expect(at(supply, returned + more).deliveryEffectiveness).toBeLessThanOrEqual(
          before.deliveryEffectiveness + SLACK,
        );
      }),
    );
  });

  it("refuses air that would be drier than dry, and says when the register warms the room", () => {
    expect(() => deliveryEffectivenessCooling({ ...house, returnZoneEnthalpyBtuPerLb: 28.7 })).toThrowError(
      expect.objectContaining({ errors: [expect.objectContaining({ pointer: "#/returnZoneEnthalpyBtuPerLb" })] }),
    );
    const weak = deliveryEffectivenessCooling({ ...house, capacityBtuPerH: 5000 });
    expect(weak.deliveryEffectiveness).toBeLessThan(0);
    expect(weak.notes.map((note) => note.code)).toEqual(["register-warmer-than-room"]);
  });
});

describe("saving fraction of the two heating cases [METHODS, derived]", () => {
  it("is 8.29 % with regain 0.10", () => {
    const [house] = fc.sample(heatingDucts, { numRuns: 1, seed: 1 });
    const at = (supplyShare: number, returnShare: number) =>
      delivered(
        {
          ...house!,
          fanFlowCfm: 1200,
          supplyAreaFt2: 540,
          returnAreaFt2: 150,
          supplyRValue: 4.9,
          returnRValue: 4.9,
          indoorTemperatureF: 70,
          supplyZoneTemperatureF: 40,
          returnZoneTemperatureF: 40,
          capacityBtuPerH: 60000,
          supplyRegain: 0.1,
          returnRegain: 0.1,
        },
        supplyShare,
        returnShare,
      ).withRegain;
    const actual = 1 - at(0.1, 0.05) / at(0.03, 0.02);
    expectClose({ actual, expected: 0.0829, relativeTolerance: 1e-3, reason: "stated to 3 figures" });
  });
});
