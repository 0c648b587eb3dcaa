import { guardBand } from "#lib/retest/guard-band.ts";
import type { Block, DocumentView, Section } from "./document-view.ts";
import { frameWords } from "./frame-words.ts";
import { instrumentNotices } from "./instrument-notices.ts";
import { engineWords } from "./messages/engine-words.ts";
import { repairName } from "./messages/names.ts";
import { gaugeBlocks, sayMissed } from "./proposal/proof.ts";
import { createJobContext, type JobContext, type ProposalInput } from "./proposal/proposal-context.ts";
import { nextBestRepairs } from "./retest/next-best.ts";

/**
 * The numbers to look for at the retest: what meets the rule and what meets it with confidence, the gauge reading of
 * each restrictor, checks along the way, each rule that may apply, what to do when it is missed, and room to write.
 */
export function retestSheetView(input: ProposalInput): DocumentView {
  const context = createJobContext(input);
  const { speaker, job, result, measureName } = context;
  const { retest } = result;
  const house = job.house.label;
  return {
    kind: "retest-sheet",
    language: input.language,
    locale: speaker.locale,
    title: speaker.say("retest.title", { house }),
    facts: [
      speaker.say("proposal.forHouse", { house }),
      speaker.say("proposal.dated", { date: speaker.date(input.isoDate) }),
    ],
    heading: retest
      ? speaker.say("retest.heading", { limit: speaker.number(retest.limitCfm25), measure: measureName })
      : speaker.say("retest.headingNone"),
    lead: retest
      ? [
          speaker.say("retest.leadMeets", {
            limit: speaker.number(retest.limitCfm25),
            // Down, as in the tables: what is read off must hold.
            accept: speaker.whole(Math.floor(retest.acceptanceCfm25)),
            confidence: speaker.percent(retest.confidenceProbability),
          }),
          speaker.say("retest.leadExpect", { expected: speaker.whole(retest.expectedCfm25) }),
        ]
      : [speaker.say("proof.noTarget")],
    notices: [
      ...(job.isInvented
        ? [{ tone: "invented" as const, title: speaker.say("invented.title"), text: speaker.say("invented.text") }]
        : []),
      ...instrumentNotices(context),
    ],
    sections: [
      howSection(context),
      ...(retest && retest.stagedChecks.length > 0 ? [stagesSection(context)] : []),
      rulesSection(context),
      missedSection(context),
      recordSection(context),
    ],
    footer: speaker.say("retest.footer", { house, date: speaker.date(input.isoDate) }),
    isoDate: input.isoDate,
    author: input.contractor?.name ?? "",
    words: frameWords(speaker),
  };
}

const section = (id: string, title: string, blocks: readonly Block[]): Section => ({
  id,
  title,
  audience: "homeowner",
  blocks,
});

function howSection(context: JobContext): Section {
  const { speaker, result } = context;
  return section("how", speaker.say("retest.howTitle"), [
    {
      kind: "list",
      items: [
        speaker.say("retest.condition.same"),
        speaker.say("retest.condition.fan"),
        speaker.say("retest.condition.house"),
        speaker.say("retest.condition.other"),
      ],
    },
    ...(result.retest ? gaugeBlocks(context) : []),
  ]);
}

function stagesSection({ speaker, result, leaks }: JobContext): Section {
  const numberOf = (siteId: string) => leaks.find(({ site }) => site.id === siteId)?.number ?? 0;
  return section("stages", speaker.say("retest.stagesTitle"), [
    {
      kind: "table",
      table: {
        caption: speaker.say("retest.stagesTable"),
        columns: [{ label: speaker.say("retest.after") }, { label: speaker.say("retest.reads"), isNumeric: true }],
        rows: (result.retest?.stagedChecks ?? []).map(({ afterSiteIds, stopBelowCfm25 }) => [
          speaker.list(
            afterSiteIds
              .map(numberOf)
              .sort((a, b) => a - b)
              .map(String),
          ),
          speaker.whole(Math.floor(stopBelowCfm25)),
        ]),
      },
    },
  ]);
}

function rulesSection({ speaker, result, language }: JobContext): Section {
  const { retest } = result;
  const acceptance = (upperLimit: number) =>
    retest
      ? speaker.whole(
          Math.floor(
            guardBand({
              upperLimit,
              relativeStandardUncertainty: retest.relativeUncertaintyRatio,
              confidence: retest.confidenceProbability,
            }).acceptanceLimit,
          ),
        )
      : "";
  return section("rules", speaker.say("retest.rulesTitle"), [
    {
      kind: "table",
      table: {
        caption: speaker.say("retest.rulesTable"),
        columns: [
          { label: speaker.say("retest.rule") },
          { label: speaker.say("retest.limit"), isNumeric: true },
          { label: speaker.say("retest.sure"), isNumeric: true },
          { label: speaker.say("retest.today"), isNumeric: true },
          { label: speaker.say("retest.met") },
          { label: speaker.say("retest.expected"), isNumeric: true },
        ],
        rows: result.compliance.map(({ title, limitCfm25, valueCfm25, meetsRule, predictedAfterCfm25 }) => [
          engineWords(language, title),
          speaker.number(limitCfm25),
          acceptance(limitCfm25),
          speaker.whole(valueCfm25),
          speaker.say(meetsRule ? "yes" : "no"),
          speaker.whole(predictedAfterCfm25),
        ]),
      },
    },
  ]);
}

function missedSection(context: JobContext): Section {
  const { speaker, language } = context;
  const next = nextBestRepairs(context);
  const repairs: Block[] =
    next.length === 0
      ? [{ kind: "text", text: speaker.say("retest.missedNone") }]
      : [
          { kind: "text", text: speaker.say("retest.missedLead") },
          {
            kind: "table",
            table: {
              caption: speaker.say("retest.missedTable"),
              columns: [
                { label: speaker.say("column.number"), isNumeric: true },
                { label: speaker.say("column.leak") },
                { label: speaker.say("column.repair") },
                { label: speaker.say("retest.perDollar"), isNumeric: true },
              ],
              rows: next.map(({ number, label, repairId, title, cfmPer100Usd }) => [
                String(number),
                label,
                repairName(language, repairId, title),
                speaker.number(cfmPer100Usd),
              ]),
            },
          },
        ];
  return section("missed", speaker.say("retest.missedTitle"), [
    ...repairs,
    { kind: "subheading", text: speaker.say("retest.agreedTitle") },
    { kind: "text", text: context.contractor?.missedGoal ? sayMissed(context) : speaker.say("retest.agreedNone") },
  ]);
}

const RECORD_LINES = 5;

/** Room to write the readings by hand. */
function recordSection({ speaker }: JobContext): Section {
  const columns = ["duct", "fan", "plate", "flow", "who", "when"] as const;
  return section("record", speaker.say("retest.recordTitle"), [
    {
      kind: "table",
      table: {
        caption: speaker.say("retest.recordTable"),
        columns: columns.map((column) => ({ label: speaker.say(`retest.record.${column}`) })),
        rows: Array.from({ length: RECORD_LINES }, () => columns.map(() => " ")),
      },
    },
  ]);
}
