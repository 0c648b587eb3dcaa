import { moistAirEnthalpy } from "#lib/air/moist-air.ts";
import type { ClimateBins } from "./climate-year.ts";

/**
 * Enthalpy of outdoor air in each bin, Btu/lb of dry air, in step with the bins' arrays.
 * h = 0.24 t + W (1061 + 0.444 t). Source: ashrae-fundamentals-psychrometrics (form of).
 */
export function binEnthalpies({ temperatureF, humidityRatio }: ClimateBins): Float64Array {
  return temperatureF.map((dryBulbF, bin) => moistAirEnthalpy(dryBulbF, humidityRatio[bin]!));
}
