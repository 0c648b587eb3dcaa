import { fittingRepairs } from "#lib/scope/fitting-repairs.ts";
import { STARTING_CATALOGUE } from "#lib/scope/repairs.ts";
import type { Block, Section } from "../document-view.ts";
import { repairName } from "../messages/names.ts";
import type { JobContext } from "./proposal-context.ts";

/** Hours and mess to expect. */
export function visitSection(context: JobContext): Section | null {
  const { speaker, chosen, leaks, book } = context;
  if (!chosen) return null;
  const { hours, visits } = context.hoursAtHouse(chosen);
  const places = [
    ...new Set(
      chosen.measures.flatMap(({ siteId }) => {
        const leak = leaks.find(({ site }) => site.id === siteId);
        return leak ? [leak.placeLabel] : [];
      }),
    ),
  ];
  const sprays = chosen.measures.some(({ repairId }) => repairId === "spray-from-inside");
  return {
    id: "visit",
    title: speaker.say("visit.title"),
    audience: "homeowner",
    isFolded: true,
    blocks: [
      text(
        [
          speaker.say("visit.hours", { crew: book.labour.crewCount, hours, visits }),
          ...(places.length > 0 ? [speaker.say("visit.places", { places: speaker.list(places) })] : []),
        ].join(" "),
      ),
      {
        kind: "list",
        items: [
          speaker.say("visit.noise"),
          speaker.say("visit.dust"),
          speaker.say("visit.clear"),
          speaker.say("visit.pets"),
          ...(sprays ? [speaker.say("visit.spray")] : []),
        ],
      },
    ],
  };
}

/** What the owner can safely do alone: only repairs that the catalogue calls safe, at leaks that open into a room. */
export function yourselfSection({ speaker, leaks, job, language }: JobContext): Section {
  const own = leaks.flatMap(({ site, number, label }) => {
    const kind = job.places.find(({ id }) => id === site.placeId)?.kind;
    const repair = fittingRepairs({ catalogue: STARTING_CATALOGUE, site }).find(
      ({ isSafeForOwner }) => isSafeForOwner && kind === "conditioned" && !site.isSuspectedAsbestos,
    );
    return repair
      ? [speaker.say("yourself.leak", { number, label, repair: repairName(language, repair.id, repair.plainTitle) })]
      : [];
  });
  return {
    id: "yourself",
    title: speaker.say("yourself.title"),
    audience: "homeowner",
    isFolded: true,
    blocks: [
      text(speaker.say("yourself.lead")),
      { kind: "list", items: [speaker.say("yourself.filter"), speaker.say("yourself.vents"), ...own] },
      text(`${speaker.say("yourself.dont")} ${speaker.say("yourself.tape")}`),
    ],
  };
}

const text = (words: string): Block => ({ kind: "text", text: words });
