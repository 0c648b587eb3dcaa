/** Bins of one season, as columns of equal length. */
export interface WeatherColumns {
  readonly count: number;
  readonly temperatureF: Float64Array;
  readonly sunBtuPerHFt2: Float64Array;
  readonly groundF: Float64Array;
  /** 1 where the sun is down and the sky may be clear, else 0. */
  readonly isNight: Float64Array;
  /** Read in cooling only. */
  readonly humidityRatio: Float64Array;
  readonly enthalpyBtuPerLb: Float64Array;
}

/**
 * Temperature of each place as a straight line of the weather, one entry a place:
 * t = constant + outdoor·t_out + sun·I + ground·t_ground + night·(1 at night). Both zone-temperature and
 * attic-temperature have this form.
 */
export interface ZoneLines {
  readonly constant: Float64Array;
  readonly outdoor: Float64Array;
  readonly sun: Float64Array;
  readonly ground: Float64Array;
  readonly night: Float64Array;
  /** Share of a place's moisture that is outdoor air's; the rest is the rooms'. Read in cooling only. */
  readonly outdoorMoistureShare: Float64Array;
}

/** One straight line of the weather. */
export interface WeatherLine {
  constant: number;
  outdoor: number;
  sun: number;
  ground: number;
  night: number;
}

export const createWeatherLine = (): WeatherLine => ({ constant: 0, outdoor: 0, sun: 0, ground: 0, night: 0 });

/** Adds a place's line to another, weighted. */
export function addZone(line: WeatherLine, zones: ZoneLines, place: number, weight: number): void {
  line.constant += weight * zones.constant[place]!;
  line.outdoor += weight * zones.outdoor[place]!;
  line.sun += weight * zones.sun[place]!;
  line.ground += weight * zones.ground[place]!;
  line.night += weight * zones.night[place]!;
}

export function clearLine(line: WeatherLine): void {
  line.constant = 0;
  line.outdoor = 0;
  line.sun = 0;
  line.ground = 0;
  line.night = 0;
}
