import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { coolingLines } from "#lib/distribution/cooling-performance.ts";
import {
  createFixedEquipmentSeason,
  fillFixedCooling,
  fillFixedHeating,
  LEAST_USEFUL_SHARE,
} from "#lib/distribution/fixed-equipment-season.ts";
import { heatPumpBin } from "#lib/distribution/heat-pump-bin.ts";
import { heatPumpPerformance } from "#lib/distribution/heat-pump-performance.ts";
import { createHeatPumpSeason, fillHeatPumpSeason } from "#lib/distribution/heat-pump-season.ts";
import { packRuns } from "#lib/distribution/season-runs.ts";
import { seasonalEfficiency } from "#lib/distribution/seasonal-efficiency.ts";
import { createUsefulLine, usefulInBin } from "#lib/distribution/useful-line.ts";
import { expectClose } from "#tests/expect-close.ts";

const of = (...values: number[]) => Float64Array.of(...values);
const rounding = { relativeTolerance: 1e-12, reason: "the same sums in another order" } as const;

/** January, January, March. */
const season = {
  count: 3,
  slotIndex: Uint8Array.of(0, 0, 2),
  hours: of(120, 400, 500),
  loadShare: of(0.3, 0.5, 0.2),
};

/** A season in which so much arrives in each bin: the weather is made to say it. */
function arriving(...usefulBtuPerH: number[]) {
  const none = new Float64Array(usefulBtuPerH.length);
  const useful = createUsefulLine();
  useful.line.outdoor = 1;
  const columns = { sunBtuPerHFt2: none, groundF: none, isNight: none, humidityRatio: none, enthalpyBtuPerLb: none };
  return { useful, runs: packRuns({ ...season, ...columns, temperatureF: Float64Array.from(usefulBtuPerH) }) };
}

describe("fixed equipment over a season", () => {
  it("has the efficiency of seasonal-efficiency", () => {
    const out = createFixedEquipmentSeason();
    const capacityBtuPerH = 50000;
    fillFixedHeating({ ...arriving(30000, 36000, 41000), capacityBtuPerH, out });
    const { efficiency } = seasonalEfficiency({
      bins: [
        { load: 0.3, efficiency: 0.6 },
        { load: 0.5, efficiency: 0.72 },
        { load: 0.2, efficiency: 0.82 },
      ],
    });
    expectClose({ actual: 1 / (capacityBtuPerH * out.runHoursPerBtu), expected: efficiency, ...rounding });
  });

  it("puts each month's run time in its month", () => {
    const out = createFixedEquipmentSeason();
    fillFixedHeating({ ...arriving(30000, 36000, 41000), capacityBtuPerH: 50000, out });
    const [january, february, march] = out.runHoursPerBtuBySlot;
    expectClose({ actual: january!, expected: 0.3 / 30000 + 0.5 / 36000, ...rounding });
    expect(february).toBe(0);
    expectClose({ actual: march!, expected: 0.2 / 41000, ...rounding });
    const sum = out.runHoursPerBtuBySlot.reduce((all, each) => all + each, 0);
    expectClose({ actual: sum, expected: out.runHoursPerBtu, ...rounding });
  });

  it("holds a bin in which nothing arrives", () => {
    const out = createFixedEquipmentSeason();
    fillFixedHeating({ ...arriving(-4000, 36000, 41000), capacityBtuPerH: 50000, out });
    expectClose({ actual: out.runHoursPerBtu, expected: 0.3 / 2500 + 0.5 / 36000 + 0.2 / 41000, ...rounding });
  });
});

describe("the packed runs of a season", () => {
  const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const line = fc.record({
    constant: number(-9000, 9000),
    outdoor: number(-200, 200),
    sun: number(-20, 20),
    ground: number(-40, 40),
    night: number(-80, 80),
  });
  const bin = fc.record({
    slot: fc.integer({ min: 0, max: 35 }),
    temperatureF: number(-30, 115),
    sunBtuPerHFt2: number(0, 300),
    groundF: fc.constantFrom(40, 52, 61),
    isNight: fc.constantFrom(0, 1),
    humidityRatio: number(0, 0.02),
    enthalpyBtuPerLb: number(-5, 45),
    loadShare: number(0.001, 0.1),
    hours: number(1, 100),
  });

  it.each([
    ["heating", fillFixedHeating],
    ["cooling", fillFixedCooling],
  ] as const)("add up what each bin adds alone, whatever their order, %s (property)", (mode, fill) => {
    fc.assert(
      fc.property(
        fc.array(bin, { maxLength: 60 }),
        line,
        line,
        number(0.2, 1),
        (bins, dry, moist, perCapacityFactor) => {
          const column = (key: Exclude<keyof (typeof bins)[number], "slot">) =>
            Float64Array.from(bins, (each) => each[key]);
          const columns = {
            count: bins.length,
            slotIndex: Uint8Array.from(bins, ({ slot }) => slot),
            temperatureF: column("temperatureF"),
            sunBtuPerHFt2: column("sunBtuPerHFt2"),
            groundF: column("groundF"),
            isNight: column("isNight"),
            humidityRatio: column("humidityRatio"),
            enthalpyBtuPerLb: column("enthalpyBtuPerLb"),
            loadShare: column("loadShare"),
            hours: column("hours"),
          };
          const useful = createUsefulLine();
          Object.assign(useful.line, dry);
          useful.perCapacityFactor = perCapacityFactor;
          if (mode === "cooling") {
            Object.assign(useful.moistureLine, moist);
            useful.perEnthalpy = -30;
          }
          const capacityBtuPerH = 36000;
          const lines = coolingLines({ capacityAt82Ratio: 1.07, efficiencyAt95Ratio: 0.8 });
          const expected = new Float64Array(36);
          const degrees = new Float64Array(36);
          bins.forEach(({ slot, loadShare, temperatureF }, index) => {
            const ratio = mode === "cooling" ? lines.capacityConstant + lines.capacityPerF * temperatureF : 1;
            const arrives = usefulInBin(useful, columns, index, ratio * capacityBtuPerH);
            const hours = loadShare / Math.max(LEAST_USEFUL_SHARE * capacityBtuPerH, arrives);
            expected[slot]! += hours;
            degrees[slot]! += hours * temperatureF;
          });
          const out = createFixedEquipmentSeason(36);
          fill({ useful, runs: packRuns(columns), capacityBtuPerH, lines, out });
          if (mode === "cooling")
            out.runDegreeHoursPerBtuBySlot.forEach((actual, slot) => {
              expect(Math.abs(actual - degrees[slot]!)).toBeLessThanOrEqual(1e-9 * (115 * expected[slot]!));
            });
          out.runHoursPerBtuBySlot.forEach((actual, slot) => {
            if (expected[slot] === 0) expect(actual).toBe(0);
            else
              expectClose({ actual, expected: expected[slot]!, relativeTolerance: 1e-9, reason: "terms may cancel" });
          });
        },
      ),
    );
  });
});

describe("a heat pump over a season", () => {
  const capacityBtuPerH = of(18000, 26000, 33000);
  const cop = of(2.1, 2.7, 3.4);
  const loadBtu = 18e6;
  const degradationCoefficient = 0.25;
  const run = (change: Partial<Parameters<typeof fillHeatPumpSeason>[0]> = {}) => {
    const out = createHeatPumpSeason();
    fillHeatPumpSeason({
      season,
      loadBtu,
      usefulBtuPerH: of(12000, 19000, 26000),
      perCapacityFactor: 0.84,
      capacityBtuPerH,
      cop,
      degradationCoefficient,
      out,
      ...change,
    });
    return out;
  };

  it("adds up heat-pump-bin, hour for hour, with each bin's efficiency at the output that flows", () => {
    const useful = [12000, 19000, 26000];
    const expected = useful.reduce((sum, usefulBtuPerH, bin) => {
      const loadBtuPerH = (loadBtu * season.loadShare[bin]!) / season.hours[bin]!;
      const capacity = capacityBtuPerH[bin]!;
      // Below capacity η = useful/H; above, useful grows by 0.84 of each Btu that the strips add.
      const output = loadBtuPerH <= usefulBtuPerH ? capacity : capacity + (loadBtuPerH - usefulBtuPerH) / 0.84;
      const distributionEfficiency = (usefulBtuPerH + 0.84 * (output - capacity)) / output;
      const { electricKW } = heatPumpBin({
        loadBtuPerH,
        distributionEfficiency,
        capacityBtuPerH: capacity,
        cop: cop[bin]!,
        degradationCoefficient,
      });
      return sum + electricKW * season.hours[bin]!;
    }, 0);
    expectClose({ actual: run().electricKWh, expected, ...rounding });
  });

  it("keeps months, supplementary heat and run time in step with the year", () => {
    const out = run();
    const sum = (values: Float64Array) => values.reduce((all, each) => all + each, 0);
    expectClose({ actual: sum(out.electricKWhBySlot), expected: out.electricKWh, ...rounding });
    expectClose({ actual: sum(out.supplementaryKWhBySlot), expected: out.supplementaryKWh, ...rounding });
    expectClose({ actual: sum(out.runHoursBySlot), expected: out.runHours, ...rounding });
    expect(out.supplementaryKWh).toBeGreaterThan(0);
    expect(out.supplementaryKWh).toBeLessThan(out.electricKWh);
    expect(out.runHours).toBeLessThan(season.hours.reduce((all, each) => all + each, 0));
  });

  it("saves more than a fixed ratio says where leaks call for resistance heat (heat-pump-bin: 18.6 % for 12.5 %)", () => {
    const cold = { count: 1, slotIndex: Uint8Array.of(0), hours: of(1), loadShare: of(1) };
    const electricKWh = (efficiency: number) =>
      run({
        season: cold,
        loadBtu: 30000,
        usefulBtuPerH: of(24000 * efficiency),
        // The catalogue's form keeps one efficiency for all output.
        perCapacityFactor: efficiency,
        capacityBtuPerH: of(24000),
        cop: of(2.4),
      }).electricKWh;
    const saved = 1 - electricKWh(0.8) / electricKWh(0.7);
    expectClose({ actual: saved, expected: 0.186, relativeTolerance: 2e-3, reason: "stated to 3 figures" });
  });

  it("uses nothing without a load, and still has an answer where leaks leave nothing of the compressor's heat", () => {
    expect(run({ loadBtu: 0 }).electricKWh).toBe(0);
    const out = run({ usefulBtuPerH: of(-3000, 19000, 26000) });
    expect(Number.isFinite(out.electricKWh)).toBe(true);
    expect(out.supplementaryKWh).toBeGreaterThan(run().supplementaryKWh);
  });
});

describe("a heat pump's use as its load grows", () => {
  it("is 0 without a load, never falls and never jumps, however little the ducts leave (property)", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.5, max: 0.9, noNaN: true }),
        fc.double({ min: 0.06, max: 0.9, noNaN: true }),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        (usefulShare, perCapacityFactor, degradationCoefficient) => {
          const cold = { count: 1, slotIndex: Uint8Array.of(0), hours: of(1), loadShare: of(1) };
          const electricKWh = (loadBtu: number) => {
            const out = createHeatPumpSeason();
            fillHeatPumpSeason({
              season: cold,
              loadBtu,
              usefulBtuPerH: of(24000 * usefulShare),
              perCapacityFactor,
              capacityBtuPerH: of(24000),
              cop: of(2.4),
              degradationCoefficient,
              out,
            });
            return out.electricKWh;
          };
          // The steepest the use can rise: all of it by strips whose heat is worth least, beside the compressor.
          const steepest = (1 / 0.05 / 3412) * (1 / 0.05 + 1 + 1 / 2.4) * 1.5;
          let last = electricKWh(0);
          expect(last).toBe(0);
          for (let load = 100; load <= 40000; load += 100) {
            const next = electricKWh(load);
            expect(next).toBeGreaterThanOrEqual(last);
            expect(next - last).toBeLessThanOrEqual(100 * steepest);
            last = next;
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe("heat pump performance by outdoor temperature", () => {
  const ratings = { capacityAt47BtuPerH: 36000, capacityAt17BtuPerH: 21000, copAt47Ratio: 3.4, copAt17Ratio: 2.3 };
  const at = (outdoorTemperatureF: number, hasFrost = true) =>
    heatPumpPerformance({
      ...ratings,
      outdoorTemperatureF,
      ...(hasFrost ? {} : { frostCapacityFactor: 1, frostPowerFactor: 1 }),
    });

  it("returns the ratings at their temperatures", () => {
    for (const hasFrost of [true, false]) {
      expectClose({ actual: at(47, hasFrost).capacityBtuPerH, expected: 36000, ...rounding });
      expectClose({ actual: at(47, hasFrost).cop, expected: 3.4, ...rounding });
      expectClose({ actual: at(17, hasFrost).capacityBtuPerH, expected: 21000, ...rounding });
      expectClose({ actual: at(17, hasFrost).cop, expected: 2.3, ...rounding });
    }
  });

  it("takes 10 % of the capacity and 1.5 % of the power at 35 °F [doe-appendix-m, from memory]", () => {
    // Straight line at 35 °F: 21,000 + 0.6·15,000 = 30,000; power 9,130.4 + 0.6·(10,588.2 − 9,130.4) = 10,005.1.
    expectClose({ actual: at(35).capacityBtuPerH, expected: 27000, ...rounding });
    expectClose({
      actual: at(35).cop,
      expected: 27000 / (0.985 * 10005.115),
      relativeTolerance: 1e-6,
      reason: "power by hand to 8 figures",
    });
    expectClose({ actual: at(32, false).capacityBtuPerH, expected: 28500, ...rounding });
  });

  it("is continuous, never below its floors, and holds the warmest value", () => {
    for (const temperatureF of [17, 35, 47]) {
      const below = at(temperatureF - 1e-9);
      const above = at(temperatureF + 1e-9);
      expect(Math.abs(below.capacityBtuPerH - above.capacityBtuPerH)).toBeLessThan(1e-3);
      expect(Math.abs(below.cop - above.cop)).toBeLessThan(1e-6);
    }
    expect(at(-60).capacityBtuPerH).toBe(7200);
    expect(at(-60).cop).toBeGreaterThanOrEqual(1);
    expect(at(90)).toEqual(at(65));
  });
});
