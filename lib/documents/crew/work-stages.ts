import type { Retest, ScopeOption } from "#lib/job/result/plan-result.ts";
import { STARTING_CATALOGUE } from "#lib/scope/repairs.ts";
import { walkingOrder } from "#lib/scope/walking-order.ts";
import type { Block, Section } from "../document-view.ts";
import { engineWords } from "../messages/engine-words.ts";
import { repairName } from "../messages/names.ts";
import type { JobContext, NumberedLeak } from "../proposal/proposal-context.ts";
import { cautionWords } from "./caution-words.ts";
import { gaugeReading } from "./gauge-reading.ts";
import { relationWords } from "./relation-words.ts";

type StagedCheck = Retest["stagedChecks"][number];
type Measure = ScopeOption["measures"][number];

/** The work of one place, and the reading that must come before the next. */
interface WorkStage {
  title: string;
  work: readonly { measure: Measure; leak: NumberedLeak | undefined }[];
  check: string | null;
}

/** The work in walking order, with the check that each place ends in; none where the job has no target. */
export function workStages(context: JobContext, option: ScopeOption): WorkStage[] {
  const { job, result, leaks } = context;
  const checks = result.retest?.stagedChecks ?? [];
  const walk = walkingOrder({ measures: option.measures, sites: job.sites, systems: job.systems });
  return walk.map(({ siteIds }, index): WorkStage => {
    const work = siteIds.flatMap((siteId) =>
      option.measures
        .filter((measure) => measure.siteId === siteId)
        .map((measure) => ({ measure, leak: leaks.find(({ site }) => site.id === siteId) })),
    );
    const check = checks.find(({ afterSiteIds }) => siteIds.every((id) => afterSiteIds.includes(id)));
    return {
      title: stageTitle(context, work),
      work,
      check: check ? checkWords(context, check, index === walk.length - 1) : null,
    };
  });
}

function checkWords(context: JobContext, { stopBelowCfm25 }: StagedCheck, isLast: boolean): string {
  const { speaker } = context;
  const cfm = Math.floor(stopBelowCfm25);
  return [
    speaker.say(isLast ? "crew.checkDone" : "crew.checkGo", { cfm: speaker.whole(cfm) }),
    gaugeReading(context, cfm),
  ]
    .filter((words) => words !== "")
    .join(" ");
}

function stageTitle({ speaker }: JobContext, work: WorkStage["work"]): string {
  const places = speaker.list([...new Set(work.map(({ leak }) => leak?.placeLabel ?? speaker.say("propose.system")))]);
  return places.charAt(0).toUpperCase() + places.slice(1);
}

export function stageSections(context: JobContext, stages: readonly WorkStage[]): Section[] {
  const { speaker } = context;
  return stages.map(({ title, work, check }, index) => ({
    id: `stage-${index + 1}`,
    title: speaker.say("crew.stageTitle", { number: index + 1, place: title }),
    audience: "homeowner",
    blocks: [
      ...spotCautions(context, work),
      stageTable(context, work, index + 1),
      ...photoBlocks(context, work),
      ...stepBlocks(context, work),
      ...(check ? [{ kind: "text" as const, text: check, isStrong: true }] : []),
    ],
  }));
}

/** Cautions that belong to the leaks of this place, right where they matter. */
function spotCautions(context: JobContext, work: WorkStage["work"]): Block[] {
  const ids = work.map(({ measure }) => measure.siteId);
  return context.result.cautions
    .filter(({ appliesTo }) => appliesTo.some((id) => ids.includes(id)))
    .map((caution) => ({ kind: "notice", notice: { tone: "caution", ...cautionWords(context, caution) } }));
}

const photosOf = ({ leak }: WorkStage["work"][number]) => leak?.site.photos ?? [];

/** The photos of the leaks of this place, each under the number of its leak. */
function photoBlocks({ speaker }: JobContext, work: WorkStage["work"]): Block[] {
  const items = work.flatMap((each) =>
    photosOf(each).map(({ sha256, caption, takenOn }) => ({
      sha256,
      caption: speaker.say("crew.photo", {
        number: each.leak?.number ?? "",
        caption: [
          caption ?? each.leak?.label ?? speaker.say("crew.photoNone"),
          ...(takenOn ? [speaker.date(takenOn)] : []),
        ].join(", "),
      }),
    })),
  );
  return items.length > 0 ? [{ kind: "photos", items }] : [];
}

function stageTable(context: JobContext, work: WorkStage["work"], stage: number): Block {
  const { speaker, language } = context;
  return {
    kind: "table",
    table: {
      caption: speaker.say("crew.stageTable", { stage }),
      columns: [
        { label: speaker.say("column.number"), isNumeric: true },
        { label: speaker.say("column.leak") },
        { label: speaker.say("crew.size"), isNumeric: true },
        { label: speaker.say("column.repair") },
        { label: speaker.say("crew.hours"), isNumeric: true },
      ],
      rows: work.map(({ measure, leak }) => [
        leak ? String(leak.number) : "",
        leak?.label ?? speaker.say("propose.system"),
        leak ? speaker.whole(leak.result.cfm25.value) : "",
        [
          language === "en" ? measure.title : repairName(language, measure.repairId, measure.title),
          ...relationWords(context, measure),
        ].join(". "),
        speaker.number(measure.labourHours),
      ]),
    },
  };
}

/** The steps of each repair once, however many leaks need it. */
function stepBlocks({ language }: JobContext, work: WorkStage["work"]): Block[] {
  const ids = [...new Set(work.map(({ measure }) => measure.repairId))];
  return ids.flatMap((id): Block[] => {
    const repair = STARTING_CATALOGUE.repairs.find((each) => each.id === id);
    if (!repair) return [];
    return [
      { kind: "subheading", text: language === "en" ? repair.title : repairName(language, id, repair.title) },
      { kind: "list", items: repair.steps.map((step) => engineWords(language, step)) },
    ];
  });
}
