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

interface Season<Capacity> {
  useful: UsefulLine;
  weather: WeatherColumns;
  /** The equipment's output: one number, or one for each bin. */
  capacityBtuPerH: Capacity;
  /** Filled: Btu/h that the rooms get while the equipment runs. */
  out: Float64Array;
}

/** Fills the useful output of every bin of a heating season at one output. Allocates nothing. Source: derived. */
export function fillUsefulHeating({ useful, weather, capacityBtuPerH, out }: Season<number>): void {
  const { temperatureF, sunBtuPerHFt2, groundF, isNight, count } = weather;
  const { constant, outdoor, sun, ground, night } = useful.line;
  const base = useful.perCapacityFactor * capacityBtuPerH + constant;
  for (let b = 0; b < count; b++) {
    out[b] = base + outdoor * temperatureF[b]! + sun * sunBtuPerHFt2[b]! + ground * groundF[b]! + night * isNight[b]!;
  }
}

/** The same for a heat pump, whose output follows the weather. */
export function fillUsefulHeatPump({ useful, weather, capacityBtuPerH, out }: Season<Float64Array>): void {
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

/** Fills the useful output of every bin of a cooling season at one output. Allocates nothing. Source: derived. */
export function fillUsefulCooling({ useful, weather, capacityBtuPerH, out }: Season<number>): void {
  const { temperatureF, sunBtuPerHFt2, groundF, isNight, humidityRatio, enthalpyBtuPerLb, count } = weather;
  const { perEnthalpy } = useful;
  const { constant, outdoor, sun, ground, night } = useful.line;
  const moist = useful.moistureLine;
  const moistConstant = moist.constant;
  const moistOutdoor = moist.outdoor;
  const moistSun = moist.sun;
  const moistGround = moist.ground;
  const moistNight = moist.night;
  const base = useful.perCapacityFactor * capacityBtuPerH + constant;
  for (let b = 0; b < count; b++) {
    const outdoorF = temperatureF[b]!;
    const sunRate = sunBtuPerHFt2[b]!;
    const groundTemperature = groundF[b]!;
    const nightFlag = isNight[b]!;
    const moisture =
      moistConstant +
      moistOutdoor * outdoorF +
      moistSun * sunRate +
      moistGround * groundTemperature +
      moistNight * nightFlag;
    out[b] =
      base +
      outdoor * outdoorF +
      sun * sunRate +
      ground * groundTemperature +
      night * nightFlag +
      humidityRatio[b]! * moisture +
      perEnthalpy * enthalpyBtuPerLb[b]!;
  }
}
