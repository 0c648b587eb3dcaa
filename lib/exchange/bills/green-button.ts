import { parseXml } from "../hpxml/xml-node.ts";
import { type BilledField, type BillFile, billProblem, billsOfUses, FUEL_WORDS } from "./billed-use.ts";
import { ALLOWED_UNITS } from "./espi-codes.ts";
import { type BillingPeriod, type EspiFeed, readFeed } from "./espi-feed.ts";
import { type ClockOffset, clockOfFile, clockOfZone, daysOfSpan } from "./local-days.ts";
import { sumToPeriods } from "./sum-to-periods.ts";

/**
 * Bills from a Green Button file: an Atom feed of the ESPI schema, with intervals, billing periods, or both. Days are
 * those of the clock that the file describes; without one, of `timeZone`, which is said. Source: naesb-req21-espi.
 * Left out: cost, demand, energy fed back, volumes of gas (their heat is not in the file).
 * @throws InputProblem that names the element, what is wrong and what is allowed.
 */
export function readGreenButton(text: string, timeZone: string): BillFile {
  const feed = readFeed(parseXml(text, "feed").root);
  const notes = [...feed.leftOut];
  const clock = feed.localTime ? clockOfFile(feed.localTime) : clockOfZone(timeZone);
  if (!feed.localTime) notes.push(`The file does not say its local time: days are those of ${timeZone}.`);
  const fields = fuelsOf(feed);
  if (fields.length > 1 && feed.periods.some(({ field }) => field === undefined))
    notes.push("Billing periods that do not say their fuel were left out, for the file holds several fuels.");
  const uses = fields.flatMap((field) => {
    const periods = periodsOf(feed, field, clock);
    const series = feed.series.find((each) => each.field === field);
    const read = sumToPeriods(series ?? { field, stepUse: 1, path: "feed", intervals: [] }, periods, clock);
    notes.push(...read.notes);
    return read.uses;
  });
  return { bills: billsOfUses(uses), notes };
}

function fuelsOf({ series, periods, leftOut }: EspiFeed): BilledField[] {
  series.forEach(({ field, path }, index) => {
    if (series.findIndex((each) => each.field === field) === index) return;
    throw billProblem({
      at: path,
      detail: `a second series of ${FUEL_WORDS[field].fuel} stands in the file`,
      fix: "It may be the same use twice: download one meter and one interval length at a time.",
    });
  });
  const fields = new Set([
    ...series.filter(({ intervals }) => intervals.length > 0).map(({ field }) => field),
    ...periods.flatMap(({ field }) => field ?? []),
  ]);
  if (fields.size === 0)
    throw billProblem({
      at: "feed",
      detail: leftOut[0] ?? "no IntervalReading and no UsageSummary with overallConsumptionLastPeriod stands in it",
      fix: `Download the file with the use delivered, in uom ${ALLOWED_UNITS}.`,
    });
  return [...fields];
}

/** The billing periods of a fuel. One that does not say its fuel belongs to the only one there is. */
function periodsOf({ periods, series }: EspiFeed, field: BilledField, clock: ClockOffset): BillingPeriod[] {
  const isOnly = [...series, ...periods].every((each) => each.field === undefined || each.field === field);
  const own = periods
    .filter((period) => period.field === field || (period.field === undefined && isOnly))
    .sort((a, b) => a.start - b.start);
  own.forEach((period, index) => {
    const before = own[index - 1];
    if (before === undefined || daysOfSpan(period, clock).first > daysOfSpan(before, clock).last) return;
    throw billProblem({
      at: `${period.path}/billingPeriod`,
      detail: `it begins within the period of ${before.path}`,
      fix: "Billing periods of a fuel may not overlap; download the file again.",
    });
  });
  return own;
}
