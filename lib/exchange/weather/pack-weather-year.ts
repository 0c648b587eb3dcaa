import type { ClimateYear } from "#lib/climate/climate-year.ts";
import type { WeatherYear } from "#lib/job/weather-year.ts";

const BIN_WIDTH_F = 5;
const LONGEST_TITLE = 120;

/** Kept to five decimals of the ratio, whole watts and hundredths of a degree: finer than any sensor behind the file. */
const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals));
const hundredths = (values: ArrayLike<number>): number[] => Array.from(values, (value) => rounded(value, 2));

/** A year read from a weather file, small enough to stand in the job. Empty bins between full ones are kept as 0 hours. */
export function packWeatherYear({ bins, months, design, ...site }: ClimateYear): WeatherYear {
  const packed = {
    coldestBinLowF: [] as number[],
    binsCount: [] as number[],
    hours: [] as number[],
    humidityRatio: [] as number[],
    globalIrradianceWPerM2: [] as number[],
  };
  for (let month = 1; month <= 12; month += 1) {
    for (let shift = 1; shift <= 3; shift += 1) {
      const own = new Map<number, number>();
      bins.month.forEach((each, at) => {
        if (each === month && bins.shift[at] === shift) own.set(bins.temperatureF[at]! - BIN_WIDTH_F / 2, at);
      });
      const coldest = Math.min(...own.keys());
      const count = (Math.max(...own.keys()) - coldest) / BIN_WIDTH_F + 1;
      packed.coldestBinLowF.push(coldest);
      packed.binsCount.push(count);
      for (let bin = 0; bin < count; bin += 1) {
        const at = own.get(coldest + bin * BIN_WIDTH_F);
        packed.hours.push(at === undefined ? 0 : bins.hours[at]!);
        packed.humidityRatio.push(at === undefined ? 0 : rounded(bins.humidityRatio[at]!, 5));
        packed.globalIrradianceWPerM2.push(at === undefined ? 0 : rounded(bins.globalIrradianceWPerM2[at]!, 0));
      }
    }
  }
  return {
    stationId: site.stationId.replaceAll(/[^\w-]/g, "").slice(0, 20) || "weather-file",
    title: site.stationName.slice(0, LONGEST_TITLE),
    elevationFt: rounded(site.elevationFt, 1),
    stationPressurePa: rounded(site.stationPressurePa, 0),
    design: {
      heating99F: rounded(design.heating99F, 2),
      heating996F: rounded(design.heating996F, 2),
      cooling1F: rounded(design.cooling1F, 2),
      cooling04F: rounded(design.cooling04F, 2),
      coolingHumidityRatio: rounded(design.coolingHumidityRatio, 5),
    },
    meanTemperatureF: hundredths(months.meanTemperatureF),
    meanDailyMaximumF: hundredths(months.meanDailyMaximumF),
    meanDailyMinimumF: hundredths(months.meanDailyMinimumF),
    heatingDegreeDaysAt65: hundredths(months.heatingDegreeDaysAt65),
    coolingDegreeDaysAt65: hundredths(months.coolingDegreeDaysAt65),
    ...packed,
  };
}
