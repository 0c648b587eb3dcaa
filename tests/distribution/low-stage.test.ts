import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createHeatPumpSeason, fillHeatPumpSeason } from "#lib/distribution/heat-pump-season.ts";
import { lowStageLosses } from "#lib/distribution/low-stage.ts";
import { fillStagedHeatPumpSeason, type LowStageSeason } from "#lib/distribution/staged-heat-pump-season.ts";
import { expectClose } from "#tests/expect-close.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rounding = { relativeTolerance: 1e-12, reason: "the same sums" } as const;

describe("ducts at a low stage (derived: fan and orifice laws)", () => {
  it("lose more through their walls and leak no larger a share, the less air the stage moves (property)", () => {
    fc.assert(
      fc.property(
        number(300, 3000),
        number(0, 0.5),
        number(0, 800),
        number(0.2, 0.99),
        (flow, share, conductance, phi) => {
          const at = (flowRatio: number) =>
            lowStageLosses({ fanFlowCfm: flow, leakageCfm: share * flow, conductanceBtuPerHF: conductance, flowRatio });
          const [less, more] = [at(phi), at(phi + 0.01)];
          expect(less.lowConductionFactor).toBeLessThanOrEqual(more.lowConductionFactor);
          expect(less.lowLeakShare).toBeLessThanOrEqual(more.lowLeakShare * (1 + 1e-12) + 1e-300);
          expect(less.lowLeakShare).toBeLessThanOrEqual(less.highLeakShare * (1 + 1e-12) + 1e-300);
        },
      ),
    );
  });
});

describe("the season of a heat pump with a low stage", () => {
  const bins = fc.array(
    fc.record({
      useful: number(2000, 40000),
      capacity: number(20000, 60000),
      cop: number(1.2, 4),
      load: number(0.01, 1),
    }),
    { minLength: 1, maxLength: 24 },
  );

  function seasons(
    rows: { useful: number; capacity: number; cop: number; load: number }[],
    low: Partial<LowStageSeason>,
  ) {
    const column = (read: (row: (typeof rows)[number]) => number) => Float64Array.from(rows, read);
    const whole = rows.reduce((sum, { load }) => sum + load, 0);
    const usefulBtuPerH = column(({ useful, capacity }) => Math.min(useful, capacity));
    const asked = {
      season: {
        count: rows.length,
        slotIndex: Uint8Array.from(rows, (_, b) => b % 12),
        hours: column(() => 100),
        loadShare: column(({ load }) => load / whole),
      },
      loadBtu: 25000 * 100 * rows.length,
      usefulBtuPerH,
      perCapacityFactor: 0.8,
      capacityBtuPerH: column(({ capacity }) => capacity),
      cop: column(({ cop }) => cop),
      degradationCoefficient: 0.25,
    };
    const stage: LowStageSeason = {
      capacityRatio: 1,
      blowerPowerRatio: 1,
      usefulBtuPerH: usefulBtuPerH.slice(),
      loadShareInBin: new Float64Array(rows.length),
      seasonalEfficiency: 0,
      ...low,
    };
    const single = createHeatPumpSeason();
    const staged = createHeatPumpSeason();
    fillHeatPumpSeason({ ...asked, out: single });
    fillStagedHeatPumpSeason({ ...asked, low: stage, out: staged });
    return { single, staged, stage, asked };
  }

  it("is that of one stage where the low stage is the high one (limit, property)", () => {
    fc.assert(
      fc.property(bins, (rows) => {
        const { single, staged } = seasons(rows, {});
        expectClose({ actual: staged.electricKWh, expected: single.electricKWh, ...rounding });
        expectClose({ actual: staged.runHours, expected: single.runHours, ...rounding });
        expect(staged.supplementaryKWh).toBe(single.supplementaryKWh);
      }),
    );
  });

  it("uses no less the less of the low stage arrives, and needs the same strips (property)", () => {
    fc.assert(
      fc.property(bins, number(0.3, 0.9), number(0.7, 0.95), (rows, capacityRatio, worse) => {
        const at = (arrives: number) => {
          const useful = Float64Array.from(rows, (row) => arrives * capacityRatio * Math.min(row.useful, row.capacity));
          return seasons(rows, { capacityRatio, usefulBtuPerH: useful }).staged;
        };
        const [well, badly] = [at(1), at(worse)];
        expect(badly.electricKWh).toBeGreaterThanOrEqual(well.electricKWh * (1 - 1e-12));
        expect(badly.supplementaryKWh).toBe(well.supplementaryKWh);
      }),
    );
  });
});
