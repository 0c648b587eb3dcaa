import { createWeatherLine, type WeatherColumns, type WeatherLine } from "./weather-columns.ts";

/**
 * What an hour of running is worth to the rooms as a straight line of capacity and weather. The trip of the air
 * (follow-heating.ts, follow-cooling.ts) is linear in them, so one draw's ducts and places shrink to these few numbers
 * and a bin costs about a dozen multiplications:
 * useful = perCapacity·capacity + line(weather) + humidity·moistureLine(weather) + perEnthalpy·h_out.
 */
export interface UsefulLine {
  /** Btu useful of one more Btu put into the air: also what supplementary heat in the same air is worth. */
  perCapacityFactor: number;
  readonly line: WeatherLine;
  /** Times the outdoor humidity ratio; cooling only. */
  readonly moistureLine: WeatherLine;
  perEnthalpy: number;
}

export const createUsefulLine = (): UsefulLine => ({
  perCapacityFactor: 0,
  line: createWeatherLine(),
  moistureLine: createWeatherLine(),
  perEnthalpy: 0,
});

/** Btu/h that the rooms get in one bin while the equipment gives `capacityBtuPerH`. Source: derived. */
export function usefulInBin(useful: UsefulLine, weather: WeatherColumns, bin: number, capacityBtuPerH: number): number {
  const { line, moistureLine, perCapacityFactor, perEnthalpy } = useful;
  const humidity = weather.humidityRatio[bin]!;
  return (
    perCapacityFactor * capacityBtuPerH +
    lineInBin(line, weather, bin) +
    humidity * lineInBin(moistureLine, weather, bin) +
    perEnthalpy * weather.enthalpyBtuPerLb[bin]!
  );
}

const lineInBin = ({ constant, outdoor, sun, ground, night }: WeatherLine, weather: WeatherColumns, bin: number) =>
  constant +
  outdoor * weather.temperatureF[bin]! +
  sun * weather.sunBtuPerHFt2[bin]! +
  ground * weather.groundF[bin]! +
  night * weather.isNight[bin]!;

/** Fills the useful output of every bin of a heat pump's season. Allocates nothing. Source: derived. */
export function fillUsefulHeatPump({
  useful,
  weather,
  capacityBtuPerH,
  out,
}: {
  useful: UsefulLine;
  weather: WeatherColumns;
  /** The heat pump's output in each bin. */
  capacityBtuPerH: Float64Array;
  /** Filled: Btu/h that the rooms get while it runs. */
  out: Float64Array;
}): void {
  const { temperatureF, sunBtuPerHFt2, groundF, isNight, count } = weather;
  const { constant, outdoor, sun, ground, night } = useful.line;
  const { perCapacityFactor } = useful;
  for (let b = 0; b < count; b++) {
    out[b] =
      perCapacityFactor * capacityBtuPerH[b]! +
      constant +
      outdoor * temperatureF[b]! +
      sun * sunBtuPerHFt2[b]! +
      ground * groundF[b]! +
      night * isNight[b]!;
  }
}
