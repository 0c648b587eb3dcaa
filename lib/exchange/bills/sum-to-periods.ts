import { HOURS_PER_DAY } from "#lib/units/conversions.ts";
import { formatNumber } from "#lib/units/format.ts";
import { type BilledUse, billProblem, FUEL_WORDS } from "./billed-use.ts";
import { dateOfDay } from "./day-number.ts";
import type { BillingPeriod, Interval, IntervalSeries } from "./espi-feed.ts";
import { ALMOST_A_DAY, type ClockOffset, daysOfSpan, secondsOfDays } from "./local-days.ts";

interface Dated {
  interval: Interval;
  first: number;
  last: number;
}

/** Intervals as long as this are a bill each. Source: practice. */
const LEAST_DAYS_OF_A_BILL = 14;
/** A sum further than this from what the utility billed is told. Source: practice. */
const TOLD_DIFFERENCE = 0.01;
/** A bill is an estimate when at least this share of its time is. Source: practice. */
const ESTIMATED_SHARE = 0.5;
const SECONDS_PER_HOUR = 3600;

/**
 * The use of intervals, summed to the billing periods; outside of them to calendar months, by the place's own days. No
 * interval is lost or counted twice. Where days have no reading, a period that says what was billed speaks instead;
 * without that, the sum is cut there and has the days that were read.
 * @throws InputProblem when intervals overlap.
 */
export function sumToPeriods(
  { field, stepUse, path, intervals }: IntervalSeries,
  periods: readonly BillingPeriod[],
  clock: ClockOffset,
): { uses: BilledUse[]; notes: string[] } {
  refuseOverlaps(intervals, path);
  const { fuel, unit } = FUEL_WORDS[field];
  const notes: string[] = [];
  const dated = intervals.map((interval): Dated => ({ interval, ...daysOfSpan(interval, clock) }));
  const spans = periods.map((period) => ({ period, ...daysOfSpan(period, clock) }));
  const groups = new Map<string, Dated[]>();
  for (const each of dated) {
    const at = spans.findIndex(({ first, last }) => each.first >= first && each.first <= last);
    const isBill = each.last - each.first + 1 >= LEAST_DAYS_OF_A_BILL;
    const key = at >= 0 ? `period ${at}` : isBill ? `bill ${each.first}` : dateOfDay(each.first).slice(0, 7);
    const group = groups.get(key);
    if (group) group.push(each);
    else groups.set(key, [each]);
  }
  const uses = [...groups].flatMap(([key, group]): BilledUse[] => {
    const span = key.startsWith("period") ? spans[Number(key.slice(7))] : undefined;
    const sum = sumOf(group);
    if (span?.period.use !== undefined && missingHours(group, span, clock) >= 1) return [];
    if (span?.period.use !== undefined && Math.abs(sum - span.period.use) > TOLD_DIFFERENCE * span.period.use)
      notes.push(
        `From ${dateOfDay(span.first)} the readings of ${fuel} sum to ${formatNumber(sum)} ${unit}; the utility billed ${formatNumber(span.period.use)}. The readings were taken.`,
      );
    return runsOf(group).map((run) => {
      const [first, last] = [run[0]!.first, run.at(-1)!.last];
      const hours = missingHours(run, { first, last }, clock);
      if (hours >= 1)
        notes.push(
          `From ${dateOfDay(first)} to ${dateOfDay(last)}, ${formatNumber(hours)} ${hours === 1 ? "hour" : "hours"} of ${fuel} without a reading count as no use.`,
        );
      return {
        field,
        startDate: dateOfDay(first),
        endDate: dateOfDay(last),
        use: sumOf(run),
        isEstimated: span?.period.isEstimated === true || estimatedShare(run) >= ESTIMATED_SHARE,
      };
    });
  });
  const billed = spans.flatMap(({ period, first, last }, at): BilledUse[] => {
    const group = groups.get(`period ${at}`) ?? [];
    if (period.use === undefined || (group.length > 0 && missingHours(group, { first, last }, clock) < 1)) return [];
    if (group.length > 0)
      notes.push(
        `From ${dateOfDay(first)} readings of ${fuel} are missing; what the utility billed was taken, ${formatNumber(period.use)} ${unit}.`,
      );
    const { use, isEstimated } = period;
    return [{ field, startDate: dateOfDay(first), endDate: dateOfDay(last), use, isEstimated }];
  });
  const estimated = intervals.filter(({ isEstimated }) => isEstimated).length;
  if (estimated > 0)
    notes.push(`${estimated} of ${intervals.length} readings of ${fuel} are estimates of the utility.`);
  if ([...groups.keys()].some((key) => /^\d/.test(key)))
    notes.push(
      periods.length > 0
        ? `Readings of ${fuel} outside the billing periods were summed to calendar months.`
        : `The file has no billing periods for ${fuel}: its readings were summed to calendar months.`,
    );
  return { uses: [...uses, ...billed], notes };

  /** Summed in whole steps, scaled once; what binary fractions add in the thirteenth figure is no use. */
  function sumOf(group: readonly Dated[]): number {
    return Number((group.reduce((sum, { interval }) => sum + interval.count, 0) * stepUse).toPrecision(12));
  }
}

function refuseOverlaps(intervals: readonly Interval[], path: string): void {
  intervals.forEach(({ start }, index) => {
    const before = intervals[index - 1];
    if (before === undefined || start >= before.start + before.durationSeconds) return;
    throw billProblem({
      at: path,
      detail: `two readings overlap at ${new Date(start * 1000).toISOString()} (UTC)`,
      fix: "Each time may be read once; download the file again, one meter and one interval length at a time.",
    });
  });
}

/** Groups without a whole day missing in between. */
function runsOf(group: readonly Dated[]): Dated[][] {
  const runs: Dated[][] = [];
  for (const each of group) {
    const run = runs.at(-1);
    if (run && each.first <= run.at(-1)!.last + 1) run.push(each);
    else runs.push([each]);
  }
  return runs;
}

const secondsOf = (group: readonly Dated[]): number =>
  group.reduce((sum, { interval }) => sum + interval.durationSeconds, 0);

function missingHours(group: readonly Dated[], days: { first: number; last: number }, clock: ClockOffset): number {
  const missing = (secondsOfDays(days.first, days.last, clock) - secondsOf(group)) / SECONDS_PER_HOUR;
  // Days and longer begin and end at any hour; theirs are the nearest ones.
  const isByDay = group.some(({ interval }) => interval.durationSeconds >= ALMOST_A_DAY);
  return isByDay && missing < HOURS_PER_DAY ? 0 : Math.round(missing);
}

function estimatedShare(run: readonly Dated[]): number {
  return secondsOf(run.filter(({ interval }) => interval.isEstimated)) / secondsOf(run);
}
