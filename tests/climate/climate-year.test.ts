import { describe, expect, it } from "vitest";
import { binEnthalpies } from "#lib/climate/bin-enthalpies.ts";
import { DAYS_IN_MONTH } from "#lib/climate/climate-year.ts";
import { climateYearFromHours } from "#lib/climate/climate-year-from-hours.ts";
import { dailyTemperatures, meanOfHours } from "#lib/climate/daily-temperatures.ts";
import { degreeDaysByMonth } from "#lib/climate/degree-days-by-month.ts";
import { degreeDaysFromHourly } from "#lib/climate/degree-days-from-hourly.ts";
import { shiftToNormals } from "#lib/climate/shift-to-normals.ts";
import { typicalDays } from "#lib/climate/typical-days.ts";
import { expectClose } from "#tests/expect-close.ts";
import { OHARE, TMY3_YEARS } from "./tmy3-years.ts";

const OHARE_NORMALS_1991_2020_F = [25.2, 28.8, 39.0, 49.7, 60.6, 70.6, 75.4, 73.8, 66.3, 54.0, 41.3, 30.5];
const sum = (values: Iterable<number>) => [...values].reduce((total, value) => total + value, 0);

describe("degree days by month of a typical year", () => {
  it.each(TMY3_YEARS.map((year) => [year.stationName, year] as const))(
    "nrel-tmy3 %s at 65 °F: the year as tabulated, each month within 25 °F·d",
    (_, climate) => {
      const { monthly, heatingDegreeDays, coolingDegreeDays } = degreeDaysByMonth({ climate, baseTemperatureF: 65 });
      const { heatingDegreeDaysAt65, coolingDegreeDaysAt65 } = climate.months;
      expectClose({
        actual: heatingDegreeDays + coolingDegreeDays,
        expected: sum(heatingDegreeDaysAt65) + sum(coolingDegreeDaysAt65),
        relativeTolerance: 1e-9,
        reason: "the spread is found to meet this sum",
      });
      monthly.forEach((month, index) => {
        expect(Math.abs(month.heatingDegreeDays - heatingDegreeDaysAt65[index]!)).toBeLessThan(25);
        expect(Math.abs(month.coolingDegreeDays - coolingDegreeDaysAt65[index]!)).toBeLessThan(25);
      });
    },
  );

  it("at O'Hare, hours count some 2 % more heating and 18 % more cooling than daily extremes", () => {
    const daily = degreeDaysByMonth({ climate: OHARE, baseTemperatureF: 65 });
    const hourly = degreeDaysByMonth({ climate: OHARE, baseTemperatureF: 65, basis: "hourly" });
    expect(hourly.basis).toBe("hourly");
    const reason = "the contract states it for some cold place, rounded";
    const more = (key: "heatingDegreeDays" | "coolingDegreeDays") => hourly[key] / daily[key];
    expectClose({ actual: more("heatingDegreeDays"), expected: 1.02, relativeTolerance: 0.01, reason });
    expectClose({ actual: more("coolingDegreeDays"), expected: 1.18, relativeTolerance: 0.05, reason });
  });

  it("derived: heating less cooling is days times (base less the mean of the mid-ranges), at any base", () => {
    const { midRangeMeanF, spreadShare } = dailyTemperatures(OHARE);
    expect(spreadShare).toBeGreaterThan(0.4);
    expect(spreadShare).toBeLessThan(1);
    for (const baseTemperatureF of [40, 58, 72]) {
      const { monthly } = degreeDaysByMonth({ climate: OHARE, baseTemperatureF });
      const january = monthly[0]!;
      expectClose({
        actual: january.heatingDegreeDays - january.coolingDegreeDays,
        expected: 31 * (baseTemperatureF - midRangeMeanF[0]!),
        relativeTolerance: 1e-9,
        reason: "an identity",
      });
    }
  });

  it("takes the usual spread of days where the year never crosses 65 °F, and then counts the same there", () => {
    const colder = (values: Float64Array) => values.map((each) => each - 80);
    const arctic = {
      bins: { ...OHARE.bins, temperatureF: colder(OHARE.bins.temperatureF) },
      months: {
        ...OHARE.months,
        heatingDegreeDaysAt65: OHARE.months.heatingDegreeDaysAt65.map(
          (each, month) => each - OHARE.months.coolingDegreeDaysAt65[month]! + 80 * DAYS_IN_MONTH[month]!,
        ),
        coolingDegreeDaysAt65: new Float64Array(12),
      },
    };
    expect(dailyTemperatures(arctic).spreadShare).toBe(0.69);
    expectClose({
      actual: degreeDaysByMonth({ climate: arctic, baseTemperatureF: 65 }).heatingDegreeDays,
      expected: sum(arctic.months.heatingDegreeDaysAt65),
      relativeTolerance: 1e-9,
      reason: "the mid-range alone decides",
    });
  });

  it("refuses a base that no house has", () => {
    expect(() => degreeDaysByMonth({ climate: OHARE, baseTemperatureF: Number.NaN })).toThrow("Base temperature");
  });
});

describe("a typical year at the level of 1991-2020", () => {
  const { climate, monthlyShiftF } = shiftToNormals(OHARE, OHARE_NORMALS_1991_2020_F);

  it("moves each month's hours by its gap and says so", () => {
    const before = meanOfHours(OHARE.bins);
    const after = meanOfHours(climate.bins);
    expect(climate.basis).toBe("tmy3-at-1991-2020-normals");
    monthlyShiftF.forEach((shiftF, month) => {
      expect(after[month]! - before[month]!).toBeCloseTo(shiftF, 9);
    });
    expect(sum(climate.bins.hours)).toBe(8760);
  });

  it("noaa-normals-1991-2020 O'Hare: daily mid-ranges come out as the normals", () => {
    dailyTemperatures(climate).midRangeMeanF.forEach((meanF, month) => {
      // The tabulated daily extremes are given to 0.1 °F, the degree days to a whole one a month.
      expect(Math.abs(meanF - OHARE_NORMALS_1991_2020_F[month]!)).toBeLessThan(0.15);
    });
  });

  it("a warmer level means fewer heating and more cooling degree days", () => {
    const warmer = shiftToNormals(
      OHARE,
      Array.from(
        OHARE.months.meanDailyMaximumF,
        (high, month) => (high + OHARE.months.meanDailyMinimumF[month]!) / 2 + 2,
      ),
    ).climate;
    const before = degreeDaysByMonth({ climate: OHARE, baseTemperatureF: 65 });
    const after = degreeDaysByMonth({ climate: warmer, baseTemperatureF: 65 });
    const equivalent = degreeDaysByMonth({ climate: OHARE, baseTemperatureF: 63 });
    expect(after.coolingDegreeDays).toBeGreaterThan(before.coolingDegreeDays);
    expectClose({
      actual: after.heatingDegreeDays,
      expected: equivalent.heatingDegreeDays,
      relativeTolerance: 1e-6,
      reason: "derived: a year 2 °F warmer has at 65 °F what it had at 63 °F",
    });
    expect(warmer.design.heating99F).toBeCloseTo(OHARE.design.heating99F + 2, 9);
  });

  it("refuses normals of another place", () => {
    expect(() => shiftToNormals(OHARE, Array(12).fill(80))).toThrow("too far");
    expect(() => shiftToNormals(OHARE, [])).toThrow("12 normals");
  });
});

describe("a climate year from the hours of a weather file", () => {
  const temperatureF = Float64Array.from({ length: 8760 }, (_, hour) => {
    const season = -25 * Math.cos((2 * Math.PI * hour) / 8760);
    const day = -9 * Math.cos((2 * Math.PI * ((hour % 24) - 3)) / 24);
    const weather = 6 * Math.sin(hour / 37) + 3 * Math.sin(hour / 91);
    return 52 + season + day + weather;
  });
  const year = climateYearFromHours({
    stationId: "invented",
    stationName: "Invented",
    elevationFt: 600,
    stationPressurePa: 99000,
    temperatureF,
    humidityRatio: new Float64Array(8760).fill(0.006),
    globalIrradianceWPerM2: Float64Array.from({ length: 8760 }, (_, hour) =>
      hour % 24 > 6 && hour % 24 < 18 ? 400 : 0,
    ),
  });

  it("keeps every hour, the means and the sun", () => {
    const { bins, months } = year;
    expect(sum(bins.hours)).toBe(8760);
    meanOfHours(bins).forEach((meanF, month) => {
      expect(Math.abs(meanF - months.meanTemperatureF[month]!)).toBeLessThan(0.5);
    });
    const sun = bins.globalIrradianceWPerM2.reduce((total, each, bin) => total + each * bins.hours[bin]!, 0);
    expectClose({ actual: sun, expected: 365 * 11 * 400, relativeTolerance: 1e-9, reason: "bin means keep the sum" });
  });

  it("counts degree days at other bases as the hours themselves do, within 3 %", () => {
    for (const baseTemperatureF of [55, 60, 70]) {
      const actual = degreeDaysByMonth({ climate: year, baseTemperatureF }).heatingDegreeDays;
      const expected = degreeDaysFromHourly({ hourlyTemperaturesF: temperatureF, baseTemperatureF }).heatingDegreeDays;
      expectClose({ actual, expected, relativeTolerance: 0.03, reason: "one spread a year, and bins of 5 °F" });
    }
  });

  it("has about 88 hours beyond each 1 % design temperature", () => {
    const hotter = temperatureF.filter((each) => each > year.design.cooling1F).length;
    const colder = temperatureF.filter((each) => each < year.design.heating99F).length;
    for (const count of [hotter, colder]) {
      expectClose({ actual: count, expected: 87.6, relativeTolerance: 0.03, reason: "1 % of 8,760, whole hours" });
    }
  });

  it("refuses a leap year and a missing hour", () => {
    const hours = { ...year, humidityRatio: new Float64Array(8784), globalIrradianceWPerM2: new Float64Array(8784) };
    expect(() => climateYearFromHours({ ...hours, temperatureF: new Float64Array(8784) })).toThrow("8760");
    expect(() => climateYearFromHours({ ...hours, temperatureF: new Float64Array(8760).fill(Number.NaN) })).toThrow();
  });
});

describe("bin enthalpies", () => {
  it("ashrae-fundamentals-psychrometrics: 95 °F with 0.0140 lb/lb is 38.2 Btu/lb", () => {
    const bins = {
      ...OHARE.bins,
      temperatureF: Float64Array.of(95),
      humidityRatio: Float64Array.of(0.014),
    };
    expectClose({
      actual: binEnthalpies(bins)[0]!,
      // 0.24·95 + 0.014·(1061 + 0.444·95)
      expected: 38.245,
      relativeTolerance: 1e-4,
      reason: "the handbook's formula by hand, 5 figures",
    });
  });
});

describe("typical days of a month", () => {
  it.each(TMY3_YEARS.map((year) => [year.stationName, year] as const))(
    "nrel-tmy3 %s: thirty of them have the month's mean within 0.7 °F and ascend",
    (_, climate) => {
      const daysOf = typicalDays(climate);
      const { midRangeMeanF } = dailyTemperatures(climate);
      for (const month of [1, 4, 7, 10]) {
        const days = daysOf(month, 30);
        expect(days).toHaveLength(30);
        expect([...days].sort((a, b) => a - b)).toEqual(days);
        expect(Math.abs(sum(days) / 30 - midRangeMeanF[month - 1]!)).toBeLessThan(0.7);
      }
      expect(daysOf(2, 1)).toHaveLength(1);
    },
  );
});
