import type { Assumption } from "#lib/job/result/evidence-result.ts";
import { METHODS } from "#lib/methods/catalogue.ts";
import { SOURCES } from "#lib/sources/sources.ts";
import type { Block, Section } from "../document-view.ts";
import { engineWords, sayOfEngine } from "../messages/engine-words.ts";
import { assumptionName } from "../messages/names.ts";
import { sayWarning } from "../messages/warning-words.ts";
import type { JobContext } from "./proposal-context.ts";

const METHOD_TITLES = new Map(METHODS.map(({ id, title }) => [id, title]));
/** Nothing is told by naming this project as the author of its own work. */
const OWN_WORK = "this project";

export function wordsSection({ speaker }: Pick<JobContext, "speaker">): Section {
  const keys = ["words.cfm", "words.pa", "words.vent", "words.handler", "words.range", "words.kWh"] as const;
  return {
    id: "words",
    title: speaker.say("words.title"),
    audience: "homeowner",
    isFolded: true,
    blocks: [{ kind: "list", items: keys.map((key) => speaker.say(key)) }],
  };
}

export function assumedSection({ speaker, result, language }: JobContext): Section {
  const { assumptions } = result;
  return {
    id: "assumed",
    title: speaker.say("assumed.title"),
    audience: "technical",
    blocks:
      assumptions.length === 0
        ? [{ kind: "text", text: speaker.say("assumed.none") }]
        : [
            { kind: "text", text: speaker.say("assumed.lead") },
            {
              kind: "table",
              table: {
                caption: speaker.say("assumed.table"),
                columns: [
                  { label: speaker.say("assumed.what") },
                  { label: speaker.say("assumed.value") },
                  { label: speaker.say("assumed.why") },
                ],
                rows: assumptions.map((assumption) => [
                  assumptionName(language, assumption.path, assumption.title),
                  sayValue({ speaker }, assumption),
                  engineWords(language, assumption.reason),
                ]),
              },
            },
          ],
  };
}

function sayValue({ speaker }: Pick<JobContext, "speaker">, { value, unit }: Assumption): string {
  if (typeof value === "boolean") return speaker.say(value ? "yes" : "no");
  if (typeof value === "string") return engineWords(speaker.language, value);
  if (unit === "share") return speaker.percent(value);
  return unit === "ratio"
    ? speaker.number(value)
    : `${speaker.number(value)} ${engineWords(speaker.language, unit)}`.trim();
}

/** The steps, the engine's notes as they are, and the fingerprints that let anyone repeat the calculation. */
export function workingsSection({ speaker, result, language }: JobContext): Section {
  const { trace, engineVersion, draws, seed, place } = result;
  const methods = [...new Set(trace.map(({ methodId }) => methodId))];
  const notes = [
    ...result.scope.verdict.otherReasons.map((english) => ({ english, said: sayOfEngine(language, english) })),
    ...result.warnings.map((warning) => ({
      english: `${warning.what} ${warning.why} ${warning.nextMove}`,
      said: sayWarning(language, warning),
    })),
  ];
  const said = notes.flatMap((note) => note.said ?? []);
  const unsaid = notes.flatMap((note) => (note.said === undefined ? note.english : []));
  return {
    id: "workings",
    title: speaker.say("workings.title"),
    audience: "technical",
    blocks: [
      { kind: "text", text: speaker.say("workings.lead") },
      { kind: "text", text: speaker.say("workings.version", { version: engineVersion, draws, seed }) },
      { kind: "text", text: speaker.say("workings.weather", { station: place.stationTitle }) },
      {
        kind: "text",
        text: speaker.say("workings.hashes", {
          job: shortHash(result.jobHash),
          data: shortHash(result.referenceDataHash),
        }),
      },
      {
        kind: "table",
        table: {
          caption: speaker.say("workings.table"),
          columns: [
            { label: speaker.say("workings.method") },
            { label: speaker.say("workings.step") },
            { label: speaker.say("workings.count"), isNumeric: true },
          ],
          rows: methods.map((methodId) => {
            const steps = trace.filter((step) => step.methodId === methodId);
            return [
              engineWords(language, METHOD_TITLES.get(methodId) ?? methodId),
              engineWords(language, steps[0]!.title),
              String(steps.length),
            ];
          }),
        },
      },
      ...(notes.length > 0
        ? ([
            { kind: "subheading", text: speaker.say("workings.notes") },
            ...(said.length > 0 ? [{ kind: "list" as const, items: said }] : []),
            ...(unsaid.length > 0
              ? ([
                  { kind: "text", text: speaker.say("workings.english") },
                  { kind: "list", items: unsaid, language: "en" },
                ] satisfies Block[])
              : []),
          ] satisfies Block[])
        : []),
    ],
  };
}

/** The first twelve digits of a hash: enough to tell two papers apart by eye. */
export const shortHash = (hash: string): string => hash.slice(0, 12);

export function sourcesSection({ speaker, result, language }: JobContext): Section {
  const ids = new Set([
    ...result.trace.map(({ source }) => source.sourceId),
    ...result.assumptions.map(({ source }) => source.sourceId),
    ...result.compliance.map(({ source }) => source.sourceId),
    ...result.cautions.map(({ source }) => source.sourceId),
  ]);
  return {
    id: "sources",
    title: speaker.say("sources.title"),
    audience: "technical",
    blocks: [
      {
        kind: "list",
        items: SOURCES.filter(({ id }) => ids.has(id)).map(
          ({ title, author, year, basis }) =>
            `${author === OWN_WORK ? "" : `${engineWords(language, author)}: `}${engineWords(language, title)}${year === null ? "" : `, ${year}`} (${speaker.say(`sources.${basis}`)})`,
        ),
      },
    ],
  };
}
