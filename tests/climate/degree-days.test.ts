import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DAYS_IN_MONTH } from "#lib/climate/climate-year.ts";
import { degreeDaysFromHourly } from "#lib/climate/degree-days-from-hourly.ts";
import { degreeDaysFromMonthlyMeans } from "#lib/climate/degree-days-from-monthly-means.ts";
import { expectClose } from "#tests/expect-close.ts";
import { TMY3_YEARS } from "./tmy3-years.ts";

const means = fc.array(fc.double({ min: -40, max: 110, noNaN: true }), { minLength: 12, maxLength: 12 });
const base = fc.double({ min: -60, max: 115, noNaN: true });

describe("degree days from monthly means", () => {
  it.each(TMY3_YEARS.map((year) => [year.stationName, year] as const))(
    "nrel-tmy3 %s: within 6 %% (heating) and 12 %% (cooling) of the tabulated count where there are many",
    (_, { months }) => {
      const { heatingDegreeDays, coolingDegreeDays } = degreeDaysFromMonthlyMeans({
        monthlyMeanTemperaturesF: months.meanTemperatureF,
        baseTemperatureF: 65,
      });
      const tabulated = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0);
      const heating = tabulated(months.heatingDegreeDaysAt65);
      const cooling = tabulated(months.coolingDegreeDaysAt65);
      const reason = "a correlation with an average spread of days";
      if (heating > 1000)
        expectClose({ actual: heatingDegreeDays, expected: heating, relativeTolerance: 0.06, reason });
      if (cooling > 600) expectClose({ actual: coolingDegreeDays, expected: cooling, relativeTolerance: 0.12, reason });
    },
  );

  it("derived: heating less cooling is days times (base less mean), month by month", () => {
    fc.assert(
      fc.property(means, base, (monthlyMeanTemperaturesF, baseTemperatureF) => {
        const { monthly } = degreeDaysFromMonthlyMeans({ monthlyMeanTemperaturesF, baseTemperatureF });
        monthly.forEach((month, index) => {
          const expected = DAYS_IN_MONTH[index]! * (baseTemperatureF - monthlyMeanTemperaturesF[index]!);
          const actual = month.heatingDegreeDays - month.coolingDegreeDays;
          expect(Math.abs(actual - expected)).toBeLessThan(1e-8 * (1 + Math.abs(expected)));
          expect(Math.min(month.heatingDegreeDays, month.coolingDegreeDays)).toBeGreaterThanOrEqual(0);
        });
      }),
    );
  });

  it("grows with the base in heating and falls in cooling", () => {
    fc.assert(
      fc.property(means, base, (monthlyMeanTemperaturesF, baseTemperatureF) => {
        const lower = degreeDaysFromMonthlyMeans({ monthlyMeanTemperaturesF, baseTemperatureF });
        const higher = degreeDaysFromMonthlyMeans({ monthlyMeanTemperaturesF, baseTemperatureF: baseTemperatureF + 1 });
        expect(higher.heatingDegreeDays).toBeGreaterThanOrEqual(lower.heatingDegreeDays - 1e-9);
        expect(higher.coolingDegreeDays).toBeLessThanOrEqual(lower.coolingDegreeDays + 1e-9);
      }),
    );
  });

  it("refuses eleven months and a mean that is no weather", () => {
    const twelve = Array<number>(12).fill(50);
    expect(() =>
      degreeDaysFromMonthlyMeans({ monthlyMeanTemperaturesF: twelve.slice(1), baseTemperatureF: 65 }),
    ).toThrow("12 monthly means, not 11");
    expect(() =>
      degreeDaysFromMonthlyMeans({ monthlyMeanTemperaturesF: [...twelve.slice(1), Number.NaN], baseTemperatureF: 65 }),
    ).toThrow("#/monthlyMeanTemperaturesF/11");
  });
});

describe("degree days from hours", () => {
  const day = fc.array(fc.double({ min: -40, max: 120, noNaN: true }), { minLength: 24, maxLength: 24 });

  it("derived: by extremes, heating less cooling is the base less the mid-range", () => {
    fc.assert(
      fc.property(day, base, (hourlyTemperaturesF, baseTemperatureF) => {
        const days = degreeDaysFromHourly({ hourlyTemperaturesF, baseTemperatureF });
        const middle = (Math.max(...hourlyTemperaturesF) + Math.min(...hourlyTemperaturesF)) / 2;
        expect(days.heatingDegreeDays - days.coolingDegreeDays).toBeCloseTo(baseTemperatureF - middle, 9);
      }),
    );
  });

  it("derived (convexity): hours count at least as many degree days as the day's mean would", () => {
    fc.assert(
      fc.property(day, base, (hourlyTemperaturesF, baseTemperatureF) => {
        const hourly = degreeDaysFromHourly({ hourlyTemperaturesF, baseTemperatureF, basis: "hourly" });
        const mean = hourlyTemperaturesF.reduce((sum, each) => sum + each, 0) / 24;
        expect(hourly.heatingDegreeDays).toBeGreaterThanOrEqual(Math.max(0, baseTemperatureF - mean) - 1e-9);
        expect(hourly.coolingDegreeDays).toBeGreaterThanOrEqual(Math.max(0, mean - baseTemperatureF) - 1e-9);
      }),
    );
  });

  it("refuses hours that are not whole days", () => {
    expect(() => degreeDaysFromHourly({ hourlyTemperaturesF: [], baseTemperatureF: 65 })).toThrow("0 hours");
    expect(() => degreeDaysFromHourly({ hourlyTemperaturesF: Array(25).fill(50), baseTemperatureF: 65 })).toThrow(
      "25 hours",
    );
  });
});
