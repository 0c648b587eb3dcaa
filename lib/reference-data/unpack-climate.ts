import type { ClimateBins, ClimateMonths, ClimateYear } from "#lib/climate/climate-year.ts";
import type { StationTable } from "./table-schemas.ts";

const BIN_WIDTH_F = 5;
const SHIFTS_PER_DAY = 3;
const RATIO_STEPS = 100_000;

/** The typical year of a packed station. Source: nrel-tmy3. Left out: empty bins. */
export function unpackClimate(table: StationTable): ClimateYear {
  return {
    stationId: table.stationId,
    stationName: table.title,
    elevationFt: table.elevationFt,
    stationPressurePa: table.stationPressurePa,
    basis: "tmy3",
    bins: unpackBins({
      ...table,
      humidityRatio: table.humidityRatioPer100000.map((steps) => steps / RATIO_STEPS),
    }),
    months: unpackMonths(table),
    design: { label: "estimated from TMY3", ...table.design },
  };
}

type PackedMonths = Readonly<Record<keyof ClimateMonths, readonly number[]>>;

export function unpackMonths(packed: PackedMonths): ClimateMonths {
  return {
    meanTemperatureF: Float64Array.from(packed.meanTemperatureF),
    meanDailyMaximumF: Float64Array.from(packed.meanDailyMaximumF),
    meanDailyMinimumF: Float64Array.from(packed.meanDailyMinimumF),
    heatingDegreeDaysAt65: Float64Array.from(packed.heatingDegreeDaysAt65),
    coolingDegreeDaysAt65: Float64Array.from(packed.coolingDegreeDaysAt65),
  };
}

/** Every bin of every month and shift in order: January shift 1, 2, 3, February shift 1 and so on. */
interface PackedBins {
  readonly coldestBinLowF: readonly number[];
  readonly binsCount: readonly number[];
  readonly hours: readonly number[];
  readonly humidityRatio: readonly number[];
  readonly globalIrradianceWPerM2: readonly number[];
}

export function unpackBins(table: PackedBins): ClimateBins {
  const bins = table.coldestBinLowF
    .flatMap((coldestLowF, group) =>
      Array.from({ length: table.binsCount[group]! }, (_, bin) => ({
        month: Math.floor(group / SHIFTS_PER_DAY) + 1,
        shift: (group % SHIFTS_PER_DAY) + 1,
        temperatureF: coldestLowF + bin * BIN_WIDTH_F + BIN_WIDTH_F / 2,
      })),
    )
    .map((bin, index) => ({
      ...bin,
      hours: table.hours[index]!,
      humidityRatio: table.humidityRatio[index]!,
      globalIrradianceWPerM2: table.globalIrradianceWPerM2[index]!,
    }))
    .filter((bin) => bin.hours > 0);
  return {
    month: Uint8Array.from(bins, (bin) => bin.month),
    shift: Uint8Array.from(bins, (bin) => bin.shift),
    temperatureF: Float64Array.from(bins, (bin) => bin.temperatureF),
    hours: Float64Array.from(bins, (bin) => bin.hours),
    humidityRatio: Float64Array.from(bins, (bin) => bin.humidityRatio),
    globalIrradianceWPerM2: Float64Array.from(bins, (bin) => bin.globalIrradianceWPerM2),
  };
}
