import { refuse } from "#lib/errors/input-problem.ts";
import type { Ranged } from "#lib/job/result/ranged.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { promiseParts } from "#lib/retest/promise-parts.ts";
import type { Block, DocumentView, Section } from "./document-view.ts";
import { frameWords } from "./frame-words.ts";
import { housePicture } from "./house-picture.ts";
import { instrumentNotices } from "./instrument-notices.ts";
import { sourcesSection, wordsSection, workingsSection } from "./proposal/evidence.ts";
import { goalTitle } from "./proposal/proof.ts";
import { createJobContext, type JobContext, type ProposalInput } from "./proposal/proposal-context.ts";

interface VerifiedContext extends JobContext {
  verified: NonNullable<Result["verified"]>;
  promised: NonNullable<Result["promised"]>;
  beforeCfm25: number;
  afterCfm25: number;
}

/**
 * The verified result for the homeowner: before and after with the doubt of their difference, promise against result,
 * closing checks to be signed. @throws InputProblem when the job has no retest.
 */
export function certificateView(input: ProposalInput): DocumentView {
  const context = verifiedContext(createJobContext(input));
  const { speaker, job, verified, chosen } = context;
  const house = job.house.label;
  const date = speaker.date(input.isoDate);
  const share = verified.reductionShare;
  const measuredAgain = job.tests
    .flatMap(({ stage, date: day }) => (stage === "retest" || stage === "final" ? (day ?? []) : []))
    .sort()
    .at(-1);
  return {
    kind: "certificate",
    language: input.language,
    locale: speaker.locale,
    title: speaker.say("cert.title", { house }),
    facts: [
      speaker.say("proposal.forHouse", { house }),
      ...(job.date ? [speaker.say("proposal.measured", { date: speaker.date(job.date) })] : []),
      ...(measuredAgain ? [speaker.say("cert.measuredAgain", { date: speaker.date(measuredAgain) })] : []),
      input.contractor
        ? speaker.say("proposal.by", { contractor: input.contractor.name, date })
        : speaker.say("proposal.dated", { date }),
    ],
    heading:
      (share.p10 ?? share.value) > 0
        ? speaker.say("cert.heading", { share: speaker.percent(share.value) })
        : speaker.say("cert.headingNone"),
    lead: [
      speaker.say("cert.lead", {
        before: speaker.whole(context.beforeCfm25),
        after: speaker.whole(context.afterCfm25),
        measure: context.measureName,
      }),
    ],
    opening: {
      of: "house",
      input: housePicture(context, { sealedSiteIds: chosen?.measures.map(({ siteId }) => siteId) ?? [] }),
    },
    notices: [
      ...(job.isInvented
        ? [{ tone: "invented" as const, title: speaker.say("invented.title"), text: speaker.say("invented.text") }]
        : []),
      ...instrumentNotices(context),
      { tone: "note", title: speaker.say("cert.noticeTitle"), text: speaker.say("cert.noticeText") },
    ],
    sections: [
      resultSection(context),
      promiseSection(context),
      ...billsSections(context),
      checksSection(context),
      wordsSection(context),
      workingsSection(context),
      sourcesSection(context),
    ],
    footer: speaker.say("cert.footer", { house, date }),
    isoDate: input.isoDate,
    author: input.contractor?.name ?? "",
    words: frameWords(speaker),
  };
}

function verifiedContext(context: JobContext): VerifiedContext {
  const { result } = context;
  const { verified, promised } = result;
  if (!verified || !promised) {
    return refuse({
      field: "#/tests",
      detail: "A certificate needs a retest, and this job has none.",
      fix: "Enter the test after the work with the stage “retest”.",
    });
  }
  const before =
    result.scope.target?.measure === "to-outside" ? result.leakage.toOutsideCfm25 : result.leakage.totalCfm25;
  const beforeCfm25 = before.value;
  return { ...context, verified, promised, beforeCfm25, afterCfm25: beforeCfm25 - verified.differenceCfm25.value };
}

const section = (id: string, title: string, blocks: readonly Block[]): Section => ({
  id,
  title,
  audience: "homeowner",
  blocks,
});

function resultSection(context: VerifiedContext): Section {
  const { speaker, verified, result, beforeCfm25, afterCfm25 } = context;
  const { target } = result.scope;
  const cfm = (value: number) => `${speaker.whole(value)} cfm`;
  const chance = verified.probabilityOfMeetingTarget;
  const saved = speaker.ranged(result.savings.costUsdPerYear, speaker.usd);
  const goal = target && { limit: speaker.number(target.limitCfm25), title: goalTitle(context) };
  return section("result", speaker.say("cert.resultTitle"), [
    ...(target && goal
      ? [
          {
            kind: "text" as const,
            text: speaker.say(afterCfm25 <= target.limitCfm25 ? "cert.goalMet" : "cert.goalMissed", goal),
          },
        ]
      : []),
    {
      kind: "figures",
      items: [
        { label: speaker.say("cert.before"), value: cfm(beforeCfm25) },
        { label: speaker.say("cert.after"), value: cfm(afterCfm25) },
        { label: speaker.say("cert.removed"), ...speaker.ranged(verified.differenceCfm25, cfm) },
        { label: speaker.say("cert.share"), ...speaker.ranged(verified.reductionShare, speaker.percent) },
        { label: speaker.say("cert.saving"), ...saved },
        ...(chance === null ? [] : [{ label: speaker.say("cert.chance"), value: speaker.chance(chance) }]),
      ],
    },
  ]);
}

function promiseSection({ speaker, promised, result, beforeCfm25, afterCfm25 }: VerifiedContext): Section {
  const parts = promiseParts({
    promisedRemovedCfm25: beforeCfm25 - promised.predictedCfm25.value,
    verifiedRemovedCfm25: beforeCfm25 - afterCfm25,
    promisedUsdPerYear: promised.savings.costUsdPerYear.value,
    verifiedUsdPerYear: result.savings.costUsdPerYear.value,
  });
  const isBetter = afterCfm25 <= promised.predictedCfm25.value;
  return section("promise", speaker.say("cert.promiseTitle"), [
    {
      kind: "table",
      table: {
        caption: speaker.say("cert.promiseTable"),
        columns: [
          { label: speaker.say("column.part") },
          { label: speaker.say("cert.promised"), isNumeric: true },
          { label: speaker.say("cert.result"), isNumeric: true },
        ],
        rows: [
          [speaker.say("cert.leaks"), speaker.whole(promised.predictedCfm25.value), speaker.whole(afterCfm25)],
          [
            speaker.say("cert.saving"),
            speaker.usd(promised.savings.costUsdPerYear.value),
            speaker.usd(result.savings.costUsdPerYear.value),
          ],
          [
            speaker.say("cert.carbon"),
            speaker.whole(promised.savings.co2LbPerYear.value),
            speaker.whole(result.savings.co2LbPerYear.value),
          ],
        ],
      },
    },
    { kind: "text", text: speaker.say(isBetter ? "cert.better" : "cert.worse") },
    ...(parts
      ? [
          {
            kind: "text" as const,
            text: speaker.say("cert.parts", {
              howMuch: speaker.usd(parts.howMuchUsdPerYear),
              where: speaker.usd(parts.whereUsdPerYear),
            }),
          },
        ]
      : []),
    { kind: "text", text: speaker.say("cert.difference") },
  ]);
}

/** What bills from after the work say, where there are any: each fuel beside the estimate, and plainly when they cannot tell. */
function billsSections({ speaker, result }: JobContext): Section[] {
  if (!result.laterBills) return [];
  const shown = (value: Ranged) => {
    const { value: number, doubt } = speaker.ranged(value, speaker.whole);
    return doubt ? `${number} (${doubt})` : number;
  };
  return [
    section("bills", speaker.say("cert.billsTitle"), [
      {
        kind: "table",
        table: {
          caption: speaker.say("cert.billsTable"),
          columns: [
            { label: speaker.say("cert.fuel") },
            { label: speaker.say("cert.byBills"), isNumeric: true },
            { label: speaker.say("cert.byEstimate"), isNumeric: true },
          ],
          rows: result.laterBills.map(({ fuel, saved, estimated }) => [
            speaker.say(`cert.fuel.${fuel}`),
            saved ? shown(saved) : "–",
            shown(estimated),
          ]),
        },
      },
      ...result.laterBills.map(({ fuel, isTold, agreement }) => ({
        kind: "text" as const,
        text: speaker.say(isTold && agreement ? `cert.bills.${agreement}` : "cert.bills.cannot", {
          fuel: speaker.say(`cert.fuel.${fuel}`),
        }),
      })),
      { kind: "text", text: speaker.say("cert.billsNote") },
    ]),
  ];
}

function checksSection({ speaker }: JobContext): Section {
  const checks = ["combustion", "fan", "static", "air"] as const;
  return section("checks", speaker.say("cert.checksTitle"), [
    { kind: "text", text: speaker.say("cert.checksLead") },
    {
      kind: "table",
      table: {
        caption: speaker.say("cert.checksTable"),
        columns: [
          { label: speaker.say("cert.check") },
          { label: speaker.say("cert.finding") },
          { label: speaker.say("cert.by") },
        ],
        rows: checks.map((check) => [speaker.say(`cert.check.${check}`), " ", " "]),
      },
    },
  ]);
}
