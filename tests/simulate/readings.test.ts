import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { deltaQModel } from "#lib/measure/delta-q-model.ts";
import { DEMO_FAN } from "#lib/setup/demo-instruments.ts";
import { PERFECT_OBSERVER, pressureBehind, shownPressure } from "#lib/simulate/observer.ts";
import { readBlowerDoorSubtraction } from "#lib/simulate/readings/blower-door-subtraction.ts";
import { readDeltaQ } from "#lib/simulate/readings/delta-q.ts";
import type { DuctFanReading } from "#lib/simulate/readings/duct-fan-reading.ts";
import { readPressurePan, readZonePressures } from "#lib/simulate/readings/house-at-pressure.ts";
import { readLeakageToOutside } from "#lib/simulate/readings/leakage-to-outside.ts";
import {
  readCombustionZone,
  readMatchedPressure,
  readRoomToHall,
  readStaticPressures,
  readTemperatureRise,
} from "#lib/simulate/readings/operation.ts";
import { readSideLeakage, readTotalLeakage } from "#lib/simulate/readings/total-leakage.ts";
import { leakageToOutsideAt, trueLeakage, trueOperation } from "#lib/simulate/truth.ts";
import { expectClose } from "#tests/expect-close.ts";
import { observerNumber, PLAIN_HOUSE, randomHouseNumber } from "./known-house.ts";

const house = PLAIN_HOUSE;
const observer = PERFECT_OBSERVER;
const flowOf = ({ calibration, fanPressurePa }: DuctFanReading) =>
  calibration.coefficient * fanPressurePa ** calibration.exponent;
/** An air handler whose flow gives way to pressure, as a held plenum pressure needs. */
const YIELDING = { ...house.airHandler, flowAtZeroCfm: 1100, slopeCfmPerPa: 2 };
const DIRECTIONS = ["pushing", "pulling"] as const;
/** Runs and equipment of the plain house drop under 0.002 Pa, the attic stands under 0.001 Pa. */
const PLAIN = { relativeTolerance: 2e-4, reason: "the plain house's ducts stand at one pressure within 0.002 Pa" };

describe("share of a leak that a to-outside test sees (series flow, METHODS to-outside-share)", () => {
  it.each([
    [48, 0.976],
    [25, 0.66],
    [10, 0.381],
  ])("house to zone %d of 50 Pa → %d", (houseToZonePa, share) => {
    const zonePa = 50 - houseToZonePa;
    const into = { flowCfm25: 2000, exponent: 0.6 };
    const out = { flowCfm25: 2000 * (houseToZonePa / zonePa) ** 0.6, exponent: 0.6 };
    const small = { ...house.leaks[0]!, flowCfm25: 0.01 };
    const withZone = { ...house, zones: [{ ...house.zones[0]!, toHouse: into, toOutside: out }], leaks: [small] };
    expectClose({
      actual: leakageToOutsideAt(withZone, 50).supply / (0.01 * 2 ** 0.6),
      expected: share,
      relativeTolerance: 0.0015,
      reason: "printed to 3 figures",
    });
  });
});

describe.each(DIRECTIONS)("leakage of the plain house, %s", (direction) => {
  const setUp = { fan: DEMO_FAN, direction };
  const sign = direction === "pushing" ? 1 : -1;

  it("total: the sum of its leaks, 120 + 60 + 80", () => {
    const reading = readTotalLeakage({ house, observer, setUp });
    expectClose({ actual: flowOf(reading), expected: 260, ...PLAIN });
    expectClose({ actual: reading.heldPressurePa, expected: 25 * sign, ...PLAIN });
  });

  it("to outside: those that open into the attic, 120 + 80", () => {
    const reading = readLeakageToOutside({ house, observer, setUp });
    expectClose({
      actual: flowOf(reading),
      expected: 200,
      relativeTolerance: 4e-3,
      reason: "0.002 Pa between plenum and return drive 60 cfm25 of indoor leak at 0.3 %",
    });
    expectClose({ actual: reading.houseToOutsidePressurePa, expected: 25 * sign, ...PLAIN });
  });

  it.each([
    ["supply", 180],
    ["return", 80],
  ] as const)("%s side alone: %d", (side, cfm25) => {
    expectClose({ actual: flowOf(readSideLeakage({ house, observer, setUp, side })), expected: cfm25, ...PLAIN });
  });

  it("the flow tap stands below its reference, whichever way the fan blows", () => {
    expect(readTotalLeakage({ house, observer, setUp }).flowTapPressurePa).toBeLessThan(-25);
  });
});

describe("wrong set-ups read as wrong as they are", () => {
  const setUp = { fan: DEMO_FAN, direction: "pushing" } as const;
  const right = flowOf(readTotalLeakage({ house, observer, setUp }));

  it("door shut in a total test: the house is drawn down, leaks to outside see less than 25 Pa", () => {
    const shut = readTotalLeakage({ house, observer, setUp, mistakes: { isOutsideDoorOpen: false } });
    expect(shut.solution.pressuresPa.house!).toBeLessThan(-0.5);
    expect(flowOf(shut)).toBeLessThan(right);
    expectClose({ actual: shut.heldPressurePa, expected: 25, ...PLAIN });
  });

  it("a register left open reads far too high", () => {
    const open = readTotalLeakage({ house, observer, setUp, mistakes: { openBranchIds: ["supply-1"] } });
    expect(flowOf(open)).toBeGreaterThan(3 * right);
  });

  it("duct hose referenced to the attic in a to-outside test: the ducts stand at house plus attic pressure", () => {
    const wrong = readLeakageToOutside({
      house,
      observer,
      setUp: { ...setUp, held: { signal: "supply", reference: "attic" }, targetPa: 25 },
    });
    expectClose({ actual: wrong.solution.pressuresPa.supply!, expected: 25, ...PLAIN });
  });

  it("filter in: the supply side, beyond it, is held, so the return side stands higher and leaks more", () => {
    const withFilter = readTotalLeakage({ house, observer, setUp, mistakes: { isFilterIn: true } });
    expect(flowOf(withFilter)).toBeGreaterThan(right * 1.005);
  });

  it("pulling with the flow tap read against the room: the duct's own −25 Pa counts as fan pressure", () => {
    const pulling = { fan: DEMO_FAN, direction: "pulling" } as const;
    const good = readTotalLeakage({ house, observer, setUp: pulling });
    const wrong = readTotalLeakage({
      house,
      observer,
      setUp: { ...pulling, tapReference: "house", restrictorId: good.calibration.restrictorId },
    });
    expectClose({
      actual: wrong.fanPressurePa - good.fanPressurePa,
      expected: 25,
      relativeTolerance: 1e-3,
      reason: "the duct at the fan stands 0.01 Pa off the plenum",
    });
  });
});

describe("the house at pressure", () => {
  it("subtraction: registers open less sealed, over the factor for duct to house, is the leakage to outside", () => {
    const { wholeHouseCfm50, envelopeCfm50, ductToHousePressurePa } = readBlowerDoorSubtraction({ house, observer });
    // By hand, n 0.6 for the leaks: CF = 50^.6/(50^.6 − (50 − P)^.6); 200·2^.6 at 50 Pa.
    const factor = 50 ** 0.6 / (50 ** 0.6 - (50 - ductToHousePressurePa) ** 0.6);
    expectClose({
      actual: (wholeHouseCfm50 - envelopeCfm50) * factor,
      expected: 200 * 2 ** 0.6,
      relativeTolerance: 0.03,
      reason: "open registers still drop a little: the ducts do not stand at the house's pressure quite",
    });
  });

  it("an attic stands at outdoor pressure: house to zone 50 of 50", () => {
    const [attic] = readZonePressures({ house, observer });
    expectClose({ actual: attic!.houseToZonePressurePa, expected: -50, ...PLAIN });
  });

  it("a pan over a run torn off in the attic reads near 50 Pa, over a tight run near 0", () => {
    const narrow = { flowCfm25: 100, exponent: 0.5 };
    const torn = {
      ...house,
      branches: house.branches.map((each) => (each.id === "supply-1" ? { ...each, duct: narrow } : each)),
      leaks: [...house.leaks, { ...house.leaks[0]!, id: "torn", branchId: "supply-1", flowCfm25: 900 }],
    };
    const pans = Object.fromEntries(
      readPressurePan({ house: torn, observer }).map((pan) => [pan.branchId, pan.panPressurePa]),
    );
    expect(pans["supply-1"]).toBeGreaterThan(40);
    expect(pans["supply-2"]).toBeLessThan(5);
  });
});

describe("the house in operation", () => {
  it("1000 cfm and 54,000 Btu/h: 50 °F rise (q = 1.08·Q·ΔT)", () => {
    expectClose({
      actual: readTemperatureRise(house).temperatureRiseF,
      expected: 50,
      relativeTolerance: 1e-6,
      reason: "closed form",
    });
  });

  it("static pressures: plus on the supply side, minus on the return side", () => {
    const { supplyStaticPa, returnStaticPa } = readStaticPressures({ house, observer });
    expect(supplyStaticPa).toBeGreaterThan(5);
    expect(returnStaticPa).toBeLessThan(-5);
  });

  it("matched pressure finds the air handler's flow, exactly when nothing leaks before it", () => {
    const tight = { ...house, airHandler: YIELDING, leaks: house.leaks.filter(({ side }) => side === "supply") };
    const { normalPressurePa, devicePressurePa, deviceFlowCfm } = readMatchedPressure({
      house: tight,
      observer,
      largestDeviceFlowCfm: 1500,
    });
    expectClose({ actual: devicePressurePa, expected: normalPressurePa, ...PLAIN });
    expectClose({ actual: deviceFlowCfm, expected: trueOperation(tight).fanFlowCfm, ...PLAIN });
  });

  it("a device too small stays below the normal pressure, and the square root makes up for it", () => {
    const tight = { ...house, airHandler: YIELDING, leaks: [] };
    const small = readMatchedPressure({ house: tight, observer, largestDeviceFlowCfm: 800 });
    expect(small.devicePressurePa).toBeLessThan(small.normalPressurePa);
    expectClose({
      actual: small.deviceFlowCfm * Math.sqrt(small.normalPressurePa / small.devicePressurePa),
      expected: trueOperation(tight).fanFlowCfm,
      relativeTolerance: 1e-3,
      reason: "a tight system follows Q = C·√P",
    });
  });

  it("a room with supply and no return rises above the hall when its door is shut", () => {
    expect(readRoomToHall({ house, observer })[0]!.roomToHallPressurePa).toBeGreaterThan(1);
  });

  it("exhaust draws the house down", () => {
    const at = (exhaustFlowCfm: number) =>
      readCombustionZone({ house, observer, zoneId: "house", exhaustFlowCfm }).zoneToOutsidePressurePa;
    expect(at(600)).toBeLessThan(at(300));
    expect(at(300)).toBeLessThan(at(0));
  });

  it("Delta-Q at 0 Pa is supply less return leakage to outside (METHODS delta-q-model at 0: Qs − Qr)", () => {
    const [atZero] = readDeltaQ({ house, observer, stationsPa: [0] });
    // The model is of the flows at house pressure 0; the truth's house floats a little off it.
    const held = trueOperation({ ...house, envelope: { flowCfm25: 1e6, exponent: 0.65 } }).toOutsideCfm;
    expectClose({
      actual: atZero!.deltaFlowCfm,
      expected: held.supply - held.return,
      relativeTolerance: 2e-3,
      reason: "a very open envelope holds the house near 0, not at it",
    });
  });
});

describe("Delta-Q readings follow METHODS delta-q-model where its one pressure a side holds", () => {
  it("all stations, with leaks so small that the fan's flow hardly splits anew between them and the registers", () => {
    const small = { ...house, leaks: house.leaks.map((leak) => ({ ...leak, flowCfm25: leak.flowCfm25 / 50 })) };
    const { supplyStaticPa, returnStaticPa, toOutsideCfm } = trueOperation({
      ...small,
      envelope: { flowCfm25: 1e6, exponent: 0.65 },
    });
    const points = readDeltaQ({ house: small, observer });
    const { deltaFlowsCfm } = deltaQModel({
      envelopePressuresPa: points.map(({ envelopePressurePa }) => envelopePressurePa),
      supplyLeakageCfm: toOutsideCfm.supply,
      returnLeakageCfm: toOutsideCfm.return,
      supplyPressurePa: supplyStaticPa,
      returnPressurePa: -returnStaticPa,
    });
    const largest = Math.max(...deltaFlowsCfm.map(Math.abs));
    points.forEach(({ deltaFlowCfm }, index) => {
      expect(Math.abs(deltaFlowCfm - deltaFlowsCfm[index]!)).toBeLessThan(0.02 * largest);
    });
    expect(largest).toBeGreaterThan(1);
  });
});

describe("gauges", () => {
  it("a held target is the inverse of what is shown, for any error in the band", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -60, max: 60, noNaN: true }),
        (errorInBand, shownPa) => {
          const one = { ...observer, gauge: { ...observer.gauge, errorInBand, accuracyShare: 0.01, accuracyPa: 0.25 } };
          expect(Math.abs(shownPressure(one, pressureBehind(one, shownPa)) - shownPa)).toBeLessThan(0.006);
        },
      ),
    );
  });

  it("25.17 Pa on a gauge 1 % high with a last digit of 0.1 Pa shows 25.4", () => {
    const high = {
      ...observer,
      gauge: { errorInBand: 1, accuracyShare: 0.01, accuracyPa: 0.25, resolutionPa: 0.1, noisePa: 0 },
    };
    expectClose({
      actual: shownPressure(high, 25.17),
      expected: 25.4,
      relativeTolerance: 1e-9,
      reason: "25.4217 to the last digit",
    });
  });
});

describe("random houses", () => {
  it("the same numbers give the same house", () => {
    expect(randomHouseNumber(7)).toEqual(randomHouseNumber(7));
    expect(randomHouseNumber(7)).not.toEqual(randomHouseNumber(8));
  });

  it("40 houses: parts add up, to outside stays within total, more open leaks never lower a reading", () => {
    for (let k = 0; k < 40; k++) {
      const one = randomHouseNumber(k);
      const truth = trueLeakage(one);
      const operation = trueOperation(one);
      const sides = { relativeTolerance: 1e-9, reason: "sums of the same leaks" };
      expectClose({ actual: truth.supplyCfm25 + truth.returnCfm25, expected: truth.totalCfm25, ...sides });
      expect(truth.toOutsideCfm25).toBeLessThanOrEqual(truth.totalCfm25);
      expect(operation.supplyStaticPa).toBeGreaterThan(0);
      expect(operation.returnStaticPa).toBeLessThan(0);
      expect(operation.leakageCfm.supply).toBeGreaterThan(0);
      expect(operation.leakageCfm.return).toBeGreaterThan(0);
      const setUp = { fan: DEMO_FAN, direction: "pushing", restrictorId: "open" } as const;
      const flow = flowOf(readTotalLeakage({ house: one, observer: observerNumber(k), setUp }));
      const leakier = { ...one, leaks: one.leaks.map((leak) => ({ ...leak, flowCfm25: leak.flowCfm25 * 1.5 })) };
      expect(flowOf(readTotalLeakage({ house: leakier, observer: observerNumber(k), setUp }))).toBeGreaterThan(flow);
    }
  });
});
