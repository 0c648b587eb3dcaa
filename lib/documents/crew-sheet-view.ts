import type { ScopeOption } from "#lib/job/result/plan-result.ts";
import { NEVER_IDS, NEVERS, neverOf, PREREQUISITE_IDS, PREREQUISITES } from "#lib/scope/repair-rules.ts";
import { STARTING_CATALOGUE } from "#lib/scope/repairs.ts";
import { cautionWords } from "./crew/caution-words.ts";
import { stageSections, workStages } from "./crew/work-stages.ts";
import type { Block, DocumentView, Section } from "./document-view.ts";
import { frameWords } from "./frame-words.ts";
import { housePicture } from "./house-picture.ts";
import { instrumentNotices } from "./instrument-notices.ts";
import { engineWords } from "./messages/engine-words.ts";
import { gaugeBlocks } from "./proposal/proof.ts";
import { createJobContext, type JobContext, type ProposalInput } from "./proposal/proposal-context.ts";

/** Cautions that decide whether the work starts at all; they stand on top of the sheet. */
const STOP_FIRST = ["asbestos-suspected", "combustion-test", "garage-return"];

/**
 * What the crew works from: materials to load, what to see to first, the leaks in walking order with
 * repair, hours and the cautions of the spot, staged checks, what to leave, what to do before leaving.
 */
export function crewSheetView(input: ProposalInput): DocumentView {
  const context = createJobContext(input);
  const { speaker, job, chosen, book, result } = context;
  const house = job.house.label;
  const first = result.cautions.filter(({ id }) => STOP_FIRST.includes(id));
  return {
    kind: "crew-sheet",
    language: input.language,
    locale: speaker.locale,
    title: speaker.say("crew.title", { house }),
    facts: [speaker.say("proposal.dated", { date: speaker.date(input.isoDate) })],
    heading: speaker.say("crew.heading", { house }),
    lead: [
      chosen
        ? speaker.say("crew.lead", {
            option: context.optionTitle(chosen),
            count: chosen.measures.length,
            hours: speaker.number(chosen.labourHours),
            crew: book.labour.crewCount,
            visits: context.hoursAtHouse(chosen).visits,
          })
        : speaker.say("crew.nothing"),
      ...(chosen ? [speaker.say("crew.order")] : []),
    ],
    opening: { of: "house", input: housePicture(context) },
    notices: [
      ...(job.isInvented
        ? [{ tone: "invented" as const, title: speaker.say("invented.title"), text: speaker.say("invented.text") }]
        : []),
      ...instrumentNotices(context),
      // The crew reads the engine's own words, which are written for the trade; Spanish has the plain ones.
      ...first.map((caution) => ({ tone: "caution" as const, ...cautionWords(context, caution) })),
    ],
    sections: chosen ? sectionsOf(context, chosen) : [],
    footer: speaker.say("crew.footer", { house, date: speaker.date(input.isoDate) }),
    isoDate: input.isoDate,
    author: input.contractor?.name ?? "",
    words: frameWords(speaker),
  };
}

function sectionsOf(context: JobContext, chosen: ScopeOption): Section[] {
  const { speaker, result, leaks } = context;
  const general = result.cautions.filter(({ id, appliesTo }) => appliesTo.length === 0 && !STOP_FIRST.includes(id));
  const left = leaks.filter(({ site }) => chosen.leavesUndone.some(({ siteId }) => siteId === site.id));
  const isAtWork = (siteId: string) => chosen.measures.some((measure) => measure.siteId === siteId);
  // A danger beside a leak that stays as it is does not go away with the order.
  const atLeft = result.cautions.filter(
    ({ id, appliesTo }) => appliesTo.length > 0 && !appliesTo.some(isAtWork) && !STOP_FIRST.includes(id),
  );
  const notice = (caution: (typeof general)[number]): Block => ({
    kind: "notice",
    notice: { tone: "caution", ...cautionWords(context, caution) },
  });
  const section = (id: string, title: string, blocks: readonly Block[]): Section => ({
    id,
    title,
    audience: "homeowner",
    blocks,
  });
  return [
    section("load", speaker.say("crew.loadTitle"), [loadTable(context, chosen)]),
    section("before", speaker.say("crew.beforeTitle"), [...general, ...(left.length > 0 ? [] : atLeft)].map(notice)),
    section("rules", speaker.say("crew.firstTitle"), ruleBlocks(context, chosen)),
    ...stageSections(context, workStages(context, chosen)),
    ...(left.length > 0
      ? [
          section("leave", speaker.say("crew.leaveTitle"), [
            { kind: "text", text: speaker.say("crew.leaveLead") },
            { kind: "list", items: left.map(({ number, label, placeLabel }) => `${number}. ${label}, ${placeLabel}`) },
            ...atLeft.map(notice),
          ]),
        ]
      : []),
    section("after", speaker.say("crew.afterTitle"), [
      ...(result.retest ? gaugeBlocks(context) : []),
      {
        kind: "list",
        items: [
          speaker.say("crew.after.combustion"),
          speaker.say("crew.after.static"),
          speaker.say("crew.after.clean"),
          speaker.say("crew.after.sign"),
        ],
      },
    ]),
  ];
}

/** What must be true before the repairs of this job, and what is never done with them; each once. */
function ruleBlocks({ speaker, language }: JobContext, { measures }: ScopeOption): Block[] {
  const ids = new Set(measures.map(({ repairId }) => repairId));
  const repairs = STARTING_CATALOGUE.repairs.filter(({ id }) => ids.has(id));
  const inOrder = <Id extends string>(all: readonly Id[], wanted: readonly Id[]) =>
    all.filter((id) => wanted.includes(id));
  const first = inOrder(
    PREREQUISITE_IDS,
    repairs.flatMap(({ prerequisites }) => prerequisites),
  );
  const never = inOrder(NEVER_IDS, repairs.flatMap(neverOf));
  return [
    { kind: "list", items: first.map((id) => engineWords(language, PREREQUISITES[id].text)) },
    { kind: "subheading", text: speaker.say("crew.neverTitle") },
    { kind: "list", items: never.map((id) => engineWords(language, NEVERS[id].text)) },
  ];
}

/** What to load, summed over all repairs. Rounded upward: pieces to whole ones, the rest to a tenth. */
function loadTable({ speaker, language }: JobContext, { materials }: ScopeOption): Block {
  const upwards = (amount: number, steps: number) =>
    new Intl.NumberFormat(speaker.locale, { maximumFractionDigits: 1 }).format(
      Math.ceil(amount * steps - 1e-9) / steps,
    );
  return {
    kind: "table",
    table: {
      caption: speaker.say("crew.loadTable"),
      columns: [
        { label: speaker.say("crew.material") },
        { label: speaker.say("crew.amount"), isNumeric: true },
        { label: speaker.say("crew.unit") },
      ],
      rows: materials.map(({ title, amount, unit }) => [
        engineWords(language, title),
        upwards(amount, unit === "each" ? 1 : 10),
        engineWords(language, unit),
      ]),
    },
  };
}
