/** When a test was made: a day, and where it was noted a time of day. */
export interface Moment {
  date: string;
  time?: string;
}

const MS_PER_MINUTE = 60_000;

export function momentOf({ date, time }: { date?: string; time?: string }): Moment | undefined {
  return date === undefined ? undefined : { date, time };
}

/** From one moment to the other, below 0 when they stand the other way round; undefined when a time of day is missing. */
export function minutesBetween(from: Moment, to: Moment): number | undefined {
  if (from.time === undefined || to.time === undefined) return undefined;
  const at = ({ date, time }: Moment) => Date.parse(`${date}T${time}:00Z`);
  return (at(to) - at(from)) / MS_PER_MINUTE;
}
