import { standardPressure } from "#lib/air/air-density.ts";
import { humidityRatioAt } from "#lib/air/moist-air.ts";
import { type ClimateYear, DAYS_IN_MONTH } from "#lib/climate/climate-year.ts";
import { climateYearFromHours } from "#lib/climate/climate-year-from-hours.ts";
import type { ValidityNote } from "#lib/errors/validity-note.ts";
import { fahrenheitFromCelsius, HOURS_PER_DAY, METERS_PER_FOOT } from "#lib/units/conversions.ts";
import { fillGaps, LONGEST_FILLED_HOURS } from "./fill-gaps.ts";
import type { HourRecord, WeatherSite } from "./hour-record.ts";
import { weatherProblem } from "./weather-problem.ts";

const HOURS_PER_YEAR = 8760;
/** Above this the dew point is no longer a rounding or a sensor's lag but a fault. Source: practice. */
const LARGEST_DEW_EXCESS_C = 2;
const PERCENT = 100;

/** A year read from a weather file, and what had to be done to it. */
export interface WeatherFile {
  climate: ClimateYear;
  notes: ValidityNote[];
}

/**
 * Turns the hours of a weather file, one after another from January 1, into a climate year.
 * Humidity ratio from the dew point (else relative humidity) and station pressure (else that of the elevation); a leap
 * day is left out; gaps up to 6 hours are filled. Sources: ashrae-fundamentals-psychrometrics, iso-2533.
 * @throws InputProblem that names the line when an hour is out of order, impossible or missing in a long gap.
 */
export async function collectYear(site: WeatherSite, records: AsyncIterable<HourRecord>): Promise<WeatherFile> {
  const elevationFt = site.elevationM / METERS_PER_FOOT;
  const standardPa = standardPressure(elevationFt);
  const hours: HourRecord[] = [];
  let hasLeapDay = false;
  for await (const record of records) {
    if (record.month === 2 && record.day === 29) {
      hasLeapDay = true;
      continue;
    }
    requireInOrder(record, hours.length);
    hours.push(record);
  }
  if (hours.length !== HOURS_PER_YEAR)
    throw weatherProblem({
      detail: `The file ends after ${hours.length.toLocaleString("en-US")} hours; a year has ${HOURS_PER_YEAR.toLocaleString("en-US")}`,
      fix: "Use a file of a whole year, January to December, one line an hour.",
    });

  const notes: ValidityNote[] = [];
  const column = (label: string, read: (record: HourRecord) => number | null): number[] => {
    const { filled, filledCount, longGapIndex } = fillGaps(hours.map(read));
    if (longGapIndex !== null)
      throw weatherProblem({
        lineNumber: hours[longGapIndex]!.lineNumber,
        detail: `${label} is missing for more than ${LONGEST_FILLED_HOURS} hours from here on`,
        fix: "Use a file without such gaps.",
      });
    if (filledCount > 0) notes.push(filledNote(label, filledCount));
    return filled;
  };
  const pressures = hours.flatMap((record) => record.pressurePa ?? []);
  const climate = climateYearFromHours({
    stationId: site.stationId,
    stationName: site.stationName,
    elevationFt,
    stationPressurePa:
      pressures.length === 0 ? standardPa : pressures.reduce((sum, each) => sum + each, 0) / pressures.length,
    temperatureF: column("Dry-bulb temperature", ({ dryBulbC }) =>
      dryBulbC === null ? null : fahrenheitFromCelsius(dryBulbC),
    ),
    humidityRatio: column("Humidity", (record) => humidityRatioOf(record, standardPa)),
    globalIrradianceWPerM2: column("Sun on a level surface", ({ globalIrradianceWPerM2 }) => globalIrradianceWPerM2),
  });
  if (hasLeapDay)
    notes.push({
      code: "leap-day-left-out",
      severity: "note",
      what: "February 29 was left out.",
      why: "A typical year has 365 days.",
      nextMove: "Nothing needs doing.",
    });
  return { climate, notes };
}

/** Month, day and hour that the hour of a year must bear. */
function requireInOrder({ lineNumber, month, day, hour }: HourRecord, index: number): void {
  let dayOfMonth = Math.floor(index / HOURS_PER_DAY) + 1;
  let monthDue = 1;
  while (monthDue <= 12 && dayOfMonth > DAYS_IN_MONTH[monthDue - 1]!) {
    dayOfMonth -= DAYS_IN_MONTH[monthDue - 1]!;
    monthDue += 1;
  }
  const hourDue = (index % HOURS_PER_DAY) + 1;
  if (monthDue > 12)
    throw weatherProblem({
      lineNumber,
      detail: "There are hours after December 31",
      fix: "Use a file of one year.",
    });
  if (month !== monthDue || day !== dayOfMonth || hour !== hourDue)
    throw weatherProblem({
      lineNumber,
      detail: `Expected the hour that ends at ${hourDue}:00 of ${monthDue}/${dayOfMonth}, found ${hour}:00 of ${month}/${day}`,
      fix: "The hours must follow each other from January 1, 1:00 to December 31, 24:00, in local standard time, without daylight saving.",
    });
}

function humidityRatioOf(record: HourRecord, standardPa: number): number | null {
  const { dryBulbC, dewPointC, relativeHumidityPercent, lineNumber } = record;
  const pressurePa = record.pressurePa ?? standardPa;
  if (dewPointC !== null) {
    if (dryBulbC !== null && !(dewPointC <= dryBulbC + LARGEST_DEW_EXCESS_C))
      throw weatherProblem({
        lineNumber,
        detail: `The dew point of ${dewPointC} °C lies above the air's ${dryBulbC} °C`,
        fix: "Correct one of the two, or mark it as missing the way the format does.",
      });
    const saturatedC = dryBulbC === null ? dewPointC : Math.min(dewPointC, dryBulbC);
    return humidityRatioAt(fahrenheitFromCelsius(saturatedC), 1, pressurePa);
  }
  if (relativeHumidityPercent === null || dryBulbC === null) return null;
  const share = Math.min(1, relativeHumidityPercent / PERCENT);
  return humidityRatioAt(fahrenheitFromCelsius(dryBulbC), share, pressurePa);
}

const filledNote = (label: string, count: number): ValidityNote => ({
  code: "weather-hours-filled",
  severity: "note",
  what: `${label} was missing in ${count.toLocaleString("en-US")} ${count === 1 ? "hour" : "hours"} and filled between the hours around.`,
  why: "The file marks these hours as missing.",
  nextMove: "Where many hours are missing, use another file.",
});
