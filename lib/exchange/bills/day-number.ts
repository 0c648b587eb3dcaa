const MILLISECONDS_PER_DAY = 86_400_000;

/** Days since 1970-01-01 of a date as YYYY-MM-DD. */
export const dayNumberOf = (isoDate: string): number => Date.parse(`${isoDate}T00:00:00Z`) / MILLISECONDS_PER_DAY;

/** The date as YYYY-MM-DD of a day counted from 1970-01-01. */
export const dateOfDay = (dayNumber: number): string =>
  new Date(dayNumber * MILLISECONDS_PER_DAY).toISOString().slice(0, 10);

/** Days from first to last, both counted. */
export const daysFrom = (startDate: string, endDate: string): number =>
  dayNumberOf(endDate) - dayNumberOf(startDate) + 1;
