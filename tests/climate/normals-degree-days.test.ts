import { describe, expect, it } from "vitest";
import { DAYS_IN_MONTH } from "#lib/climate/climate-year.ts";
import { degreeDaysByMonth } from "#lib/climate/degree-days-by-month.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import { expectClose } from "#tests/expect-close.ts";

const JANUARY = 0;
const JULY = 6;

/**
 * Where no day of a month crosses the base, its degree days are days × (base − mean), whatever the spread: so the
 * published monthly means tell them. Held at bases far from the month, in places of very unlike climates.
 */
describe("degree days of the places of the climate page", () => {
  it.each(["60601", "55401", "70112", "98101", "33101", "85001"])(
    "noaa-normals-1991-2020, ZIP %s: as the published monthly means say",
    async (zip) => {
      const { climate, normals } = await loadReferenceData({ house: { zip } });
      expect(normals).not.toBeNull();
      const cold = degreeDaysByMonth({ climate, baseTemperatureF: 100 }).monthly[JANUARY]!;
      const hot = degreeDaysByMonth({ climate, baseTemperatureF: 20 }).monthly[JULY]!;
      const reason = "means are published to 0.1 °F, of some 25 °F and more of difference";
      expectClose({
        actual: cold.heatingDegreeDays,
        expected: DAYS_IN_MONTH[JANUARY]! * (100 - normals!.meanTemperatureF[JANUARY]!),
        relativeTolerance: 0.004,
        reason,
      });
      expectClose({
        actual: hot.coolingDegreeDays,
        expected: DAYS_IN_MONTH[JULY]! * (normals!.meanTemperatureF[JULY]! - 20),
        relativeTolerance: 0.004,
        reason,
      });
    },
  );
});
