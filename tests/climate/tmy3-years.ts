import type { ClimateYear } from "#lib/climate/climate-year.ts";
import cases from "#tests/reference/nrel-tmy3/cases.json" with { type: "json" };

/** Five typical years of nrel-tmy3, as tabulated outside this project. */
export const TMY3_YEARS: readonly ClimateYear[] = cases.map((row) => {
  const column = (index: number) => row.bins.map((bin) => bin[index]!);
  return {
    stationId: row.stationId,
    stationName: row.stationName,
    elevationFt: row.elevationM / 0.3048,
    stationPressurePa: row.pressureMbar * 100,
    basis: "tmy3",
    bins: {
      month: Uint8Array.from(column(0)),
      shift: Uint8Array.from(column(1)),
      temperatureF: Float64Array.from(column(2), (lowF) => lowF + 2.5),
      hours: Float64Array.from(column(3)),
      humidityRatio: Float64Array.from(column(4), (each) => each / 1e5),
      globalIrradianceWPerM2: Float64Array.from(column(5)),
    },
    months: {
      meanTemperatureF: Float64Array.from(row.meanTemperatureF),
      meanDailyMaximumF: Float64Array.from(row.meanDailyMaximumF),
      meanDailyMinimumF: Float64Array.from(row.meanDailyMinimumF),
      heatingDegreeDaysAt65: Float64Array.from(row.heatingDegreeDaysAt65),
      coolingDegreeDaysAt65: Float64Array.from(row.coolingDegreeDaysAt65),
    },
    design: { label: "estimated from TMY3", ...row.design },
  };
});

export const OHARE = TMY3_YEARS.find((year) => year.stationId === "725300")!;
