import { type Block, more, type Section } from "../document-view.ts";
import { engineWords } from "../messages/engine-words.ts";
import type { JobContext } from "./proposal-context.ts";

/** Below this chance the goal is no promise, and the paper says so. */
const LEAST_CHANCE = 0.5;

/** How the work will be proved: the numbers of the retest, and what happens if they are missed. */
export function proofSection(context: JobContext): Section {
  const { speaker, result, chosen, measureName } = context;
  const { retest } = result;
  const chance = chosen?.probabilityOfReachingTarget ?? null;
  const numbers = retest
    ? [
        [
          speaker.say("proof.target", {
            limit: speaker.number(retest.limitCfm25),
            measure: measureName,
            title: goalTitle(context),
          }),
          speaker.say("proof.expect", { expected: speaker.whole(retest.expectedCfm25) }),
          ...(chance === null ? [] : [speaker.say("proof.chance", { chance: speaker.chance(chance) })]),
        ].join(" "),
        ...(chance !== null && chance < LEAST_CHANCE ? [speaker.say("proof.unlikely")] : []),
      ]
    : [speaker.say("proof.noTarget")];
  return {
    id: "proof",
    title: speaker.say("proof.title"),
    audience: "homeowner",
    blocks: [
      text(`${speaker.say("proof.lead")} ${speaker.say("proof.sign")}`),
      ...numbers.map(text),
      ...(retest ? more(speaker.say("more.gauge"), [text(sayAccepted(context)), ...gaugeBlocks(context)]) : []),
      ...(retest
        ? [{ kind: "subheading" as const, text: speaker.say("proof.missedTitle") }, text(sayMissed(context))]
        : []),
    ],
  };
}

function sayAccepted({ speaker, result }: JobContext): string {
  const { acceptanceCfm25, limitCfm25 } = result.retest!;
  return speaker.say("proof.accept", {
    accept: speaker.whole(Math.floor(acceptanceCfm25)),
    limit: speaker.number(limitCfm25),
  });
}

/** The rule behind the goal. */
export function goalTitle({ result, speaker, language }: JobContext): string {
  const { target } = result.scope;
  if (!target) return "";
  return speaker.sayIfKnown(`goal.${target.id}`) ?? engineWords(language, target.title);
}

/** What the fan's gauge must show at the goal, for each flow restrictor that can read it. */
export function gaugeBlocks({ speaker, result }: JobContext): Block[] {
  const readings = result.retest?.readings ?? [];
  if (readings.length === 0) return [text(speaker.say("proof.noGauge"))];
  return [
    {
      kind: "table",
      table: {
        caption: speaker.say("proof.gauge"),
        columns: [
          { label: speaker.say("proof.plate") },
          { label: speaker.say("proof.atLimit"), isNumeric: true },
          { label: speaker.say("proof.atAccept"), isNumeric: true },
        ],
        rows: readings.map(({ title, direction, fanPressureAtLimitPa, fanPressureAtAcceptancePa }) => [
          `${title} (${speaker.say(direction === "pushing" ? "proof.push" : "proof.pull")})`,
          speaker.number(fanPressureAtLimitPa),
          speaker.number(fanPressureAtAcceptancePa),
        ]),
      },
    },
  ];
}

/** What was agreed for a second test that misses the goal. */
export function sayMissed({ speaker, contractor }: JobContext): string {
  const missed = contractor?.missedGoal;
  if (!missed) return speaker.say("proof.missedOpen");
  return missed.rule === "credit"
    ? speaker.say("proof.missed.credit", { credit: speaker.cents(missed.creditUsdCents) })
    : speaker.say(`proof.missed.${missed.rule}`);
}

const text = (words: string): Block => ({ kind: "text", text: words });
