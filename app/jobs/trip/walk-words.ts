import type { MeasurementName } from "#lib/apportion/measurement-rows.ts";
import type { LeakWalk } from "#lib/estimate/leak-walk.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { LEAK_KINDS } from "#lib/job/leak-kinds.ts";
import { PLACE_LABELS } from "#lib/job/place.ts";
import { normalQuantile } from "#lib/numeric/distributions.ts";
import type { UnitText } from "#lib/units/unit-text.ts";

/** Where the walk stands, in words. */
export interface WalkWords {
  groups: readonly WalkGroupWords[];
  /** By the id of the leak. */
  leaks: Readonly<Record<string, { size: string; doubt: string }>>;
}

export interface WalkGroupWords {
  id: string;
  /** Only where there are several. */
  title?: string;
  /** What is measured and what of it nobody has seen; absent without a measurement. */
  state?: string;
  quarters: readonly { id: string; label: string; value: string; unit: string; doubt: string }[];
  next?: string;
  measure?: string;
  above: readonly string[];
}

const MEASUREMENT_WORDS: Readonly<Record<MeasurementName, string>> = {
  total: "total leakage",
  toOutside: "leakage to outside",
  supply: "the supply side alone",
  return: "the return side alone",
  supplyToOutside: "the supply side to outside",
  returnToOutside: "the return side to outside",
};

/** The same share of the distribution as all ranges of the answer. */
const RANGE_FACTOR = normalQuantile(0.9);
/** Less than this nobody can look for. */
const SMALLEST_SHOWN_CFM25 = 1;

export function walkWords({ walks, job, text }: { walks: readonly LeakWalk[]; job: Job; text: UnitText }): WalkWords {
  const cfm = (value: number) => text.quantity(value, "cfm");
  const range = (value: number, uncertainty: number) =>
    `could be ${text.number(Math.max(0, value - RANGE_FACTOR * uncertainty), "cfm")} to ${text.number(value + RANGE_FACTOR * uncertainty, "cfm")}`;
  return {
    leaks: Object.fromEntries(
      walks.flatMap(({ sites }) =>
        sites.map(({ id, cfm25, standardUncertaintyCfm25 }) => [
          id,
          { size: cfm(cfm25), doubt: range(cfm25, standardUncertaintyCfm25) },
        ]),
      ),
    ),
    groups: walks.map((walk): WalkGroupWords => {
      const { systemIds, measured, sites, notYetFound, foundAbove, tellsMost, lookNext } = walk;
      const sum = (list: readonly { cfm25: number }[]) => list.reduce((all, { cfm25 }) => all + cfm25, 0);
      return {
        id: systemIds.join(" "),
        ...(walks.length > 1 ? { title: systemNames(job, systemIds) } : {}),
        ...(measured.length > 0 ? { state: `${cfm(sum(sites))} found, ${cfm(sum(notYetFound))} not yet found.` } : {}),
        quarters: notYetFound
          .filter(({ cfm25 }) => cfm25 >= SMALLEST_SHOWN_CFM25)
          .map(({ side, outside, cfm25, standardUncertaintyCfm25 }) => ({
            id: `${side} ${outside}`,
            label: `${side === "supply" ? "Supply" : "Return"}, ${outside ? "to outside" : "into the house"}`,
            value: text.number(cfm25, "cfm"),
            unit: text.unit("cfm"),
            doubt: range(cfm25, standardUncertaintyCfm25),
          })),
        ...(lookNext ? { next: sayNext(job, lookNext) } : {}),
        ...(tellsMost
          ? {
              measure: `A test of ${MEASUREMENT_WORDS[tellsMost.name]} would tell most now: ${expected(tellsMost)}`,
            }
          : {}),
        above: foundAbove.map(
          ({ name, measuredCfm25, lookedLikeCfm25 }) =>
            `By their looks the found leaks add up to ${cfm(lookedLikeCfm25)}, but ${MEASUREMENT_WORDS[name]} read ${cfm(measuredCfm25)}.`,
        ),
      };
    }),
  };

  function expected({ expectedCfm25, standardUncertaintyCfm25 }: NonNullable<LeakWalk["tellsMost"]>): string {
    const size = expectedCfm25 > 0 ? `about ${cfm(expectedCfm25)} is expected, ` : "";
    return `${size}and it ${range(expectedCfm25, standardUncertaintyCfm25)}.`;
  }
}

function systemNames({ systems }: Job, ids: readonly string[]): string {
  return systems
    .filter(({ id }) => ids.includes(id))
    .map(({ id, label }) => label ?? id)
    .join(", ");
}

function sayNext(job: Job, { side, outside, placeIds, kinds }: NonNullable<LeakWalk["lookNext"]>): string {
  const places = placeIds.flatMap((id) => {
    const place = job.places.find((each) => each.id === id);
    return place ? [place.label ?? PLACE_LABELS[place.kind]] : [];
  });
  const where = places.length > 0 ? ` (${places.join(", then ")})` : "";
  const unseen = kinds.map((kind) => LEAK_KINDS[kind].label.toLowerCase());
  return [
    `Most hides on the ${side} side, ${outside ? "to outside" : "into the house"}${where}.`,
    ...(unseen.length > 0 ? [`Not seen there yet: ${unseen.join("; ")}.`] : []),
  ].join(" ");
}
