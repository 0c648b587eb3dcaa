import type { XmlNode } from "../hpxml/xml-node.ts";
import { billProblem } from "./billed-use.ts";

const SECONDS_PER_DAY = 86_400;
const DAYS_PER_WEEK = 7;

/** Seconds to add to a UTC time, in seconds since 1970, for the clock on the wall. */
export type ClockOffset = (utcSeconds: number) => number;

/** A change of the clock: a 32-bit field of month, operator, day of month, day of week, hour and second. */
interface ClockRule {
  month: number;
  operator: number;
  dayOfMonth: number;
  dayOfWeek: number;
  secondOfDay: number;
}

const LAST_OF_MONTH = 7;

/**
 * The clock that a file's LocalTimeParameters describe. Source: naesb-req21-espi, tzOffset, dstOffset and the fields of
 * DstRuleType; the widths of its bits from memory, held to the published North American rules 360E2000 and B40E2000.
 * @throws InputProblem when a value is no whole number or no rule.
 */
export function clockOfFile(parameters: XmlNode): ClockOffset {
  const whole = (name: string): number => {
    const text = parameters.text(name);
    if (text !== undefined && /^[+-]?\d+$/.test(text) && Math.abs(Number(text)) <= SECONDS_PER_DAY) return Number(text);
    throw billProblem({
      at: `${parameters.path}/${name}`,
      detail: text === undefined ? "it is missing" : `“${text.slice(0, 40)}” is no offset`,
      fix: "It must be whole seconds, at most a day: -18000.",
    });
  };
  const offset = whole("tzOffset");
  const daylight = whole("dstOffset");
  if (daylight === 0) return () => offset;
  const [start, end] = [ruleOf(parameters, "dstStartRule"), ruleOf(parameters, "dstEndRule")];
  return (utcSeconds) => {
    const standard = utcSeconds + offset;
    const year = new Date(standard * 1000).getUTCFullYear();
    const begins = secondsOfRule(start, year);
    // The end is said in the clock that it ends.
    const ends = secondsOfRule(end, year) - daylight;
    const isDaylight = begins < ends ? standard >= begins && standard < ends : standard >= begins || standard < ends;
    return isDaylight ? offset + daylight : offset;
  };
}

function ruleOf(parameters: XmlNode, name: string): ClockRule {
  const text = parameters.text(name) ?? "";
  const bits = /^[0-9A-Fa-f]{1,8}$/.test(text) ? Number.parseInt(text, 16) : 0;
  const field = (from: number, width: number) => Math.floor(bits / 2 ** from) % 2 ** width;
  const rule = {
    month: field(28, 4),
    operator: field(25, 3),
    dayOfMonth: field(20, 5),
    dayOfWeek: field(17, 3),
    secondOfDay: field(12, 5) * 3600 + field(0, 12),
  };
  const isUsable = rule.month >= 1 && rule.month <= 12 && (rule.operator === 0 || rule.dayOfWeek >= 1);
  if (isUsable && (rule.operator > 1 || rule.dayOfMonth >= 1)) return rule;
  throw billProblem({
    at: `${parameters.path}/${name}`,
    detail: `“${text.slice(0, 40)}” is no rule for the change of the clock`,
    fix: "It must be eight hexadecimal digits such as 360E2000, the second Sunday of March at 2.",
  });
}

/** When a rule falls in a year, in seconds since 1970 of the clock that it speaks of. */
function secondsOfRule({ month, operator, dayOfMonth, dayOfWeek, secondOfDay }: ClockRule, year: number): number {
  const dayNumber = (day: number) => Date.UTC(year, month - 1, day) / 1000 / SECONDS_PER_DAY;
  const lastOfMonth = Date.UTC(year, month, 0) / 1000 / SECONDS_PER_DAY;
  // 1970-01-01 was a Thursday; Monday is 1.
  const weekday = (day: number) => ((((day + 3) % DAYS_PER_WEEK) + DAYS_PER_WEEK) % DAYS_PER_WEEK) + 1;
  const onOrAfter = (day: number) => day + ((dayOfWeek - weekday(day) + DAYS_PER_WEEK) % DAYS_PER_WEEK);
  let day: number;
  if (operator === 0) day = dayNumber(dayOfMonth);
  else if (operator === 1) day = onOrAfter(dayNumber(dayOfMonth));
  else if (operator === LAST_OF_MONTH) day = onOrAfter(lastOfMonth - DAYS_PER_WEEK + 1);
  else day = onOrAfter(dayNumber(1)) + (operator - 2) * DAYS_PER_WEEK;
  return day * SECONDS_PER_DAY + secondOfDay;
}

/** The clock of a time zone by its name, such as America/Chicago. */
export function clockOfZone(timeZone: string): ClockOffset {
  const format = new Intl.DateTimeFormat("en-US", { timeZone, timeZoneName: "longOffset" });
  const known = new Map<number, number>();
  return (utcSeconds) => {
    // Zones change on the quarter hour; one look per quarter hour is enough.
    const quarter = Math.floor(utcSeconds / 900);
    const before = known.get(quarter);
    if (before !== undefined) return before;
    const said = format.formatToParts(quarter * 900_000).find(({ type }) => type === "timeZoneName")?.value ?? "GMT";
    const [, sign, hours, minutes] = /([+-])(\d{2}):(\d{2})/.exec(said) ?? [];
    const offset = sign === undefined ? 0 : (sign === "-" ? -1 : 1) * (Number(hours) * 3600 + Number(minutes) * 60);
    known.set(quarter, offset);
    return offset;
  };
}

export interface Span {
  /** Seconds since 1970, UTC. */
  start: number;
  durationSeconds: number;
}

/** A day may be an hour short when the clock changes. */
export const ALMOST_A_DAY = 23 * 3600;

/**
 * First and last day of a span, counted from 1970-01-01 on the place's clock. A span shorter than a day belongs to the
 * day it begins on; longer ones begin and end at the midnight nearest, so that spans that touch share no day.
 */
export function daysOfSpan({ start, durationSeconds }: Span, clock: ClockOffset): { first: number; last: number } {
  const dayAt = (utcSeconds: number) => Math.floor((utcSeconds + clock(utcSeconds)) / SECONDS_PER_DAY);
  if (durationSeconds < ALMOST_A_DAY) return { first: dayAt(start), last: dayAt(start) };
  const nearest = (utcSeconds: number) =>
    Math.floor((utcSeconds + clock(utcSeconds) + SECONDS_PER_DAY / 2) / SECONDS_PER_DAY);
  const first = nearest(start);
  return { first, last: Math.max(first, nearest(start + durationSeconds) - 1) };
}

/** Seconds from the midnight that begins the first day to the one that ends the last, on the place's clock. */
export function secondsOfDays(first: number, last: number, clock: ClockOffset): number {
  const utcOf = (day: number) => {
    const guess = day * SECONDS_PER_DAY - clock(day * SECONDS_PER_DAY);
    return day * SECONDS_PER_DAY - clock(guess);
  };
  return utcOf(last + 1) - utcOf(first);
}
