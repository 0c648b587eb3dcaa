import type { PlaceKind } from "#lib/job/place.ts";
import { type Block, type DocumentTable, more, type Section } from "../document-view.ts";
import { placeName } from "../messages/names.ts";
import { dollarSplit, type Mode, mainMode } from "./dollar-split.ts";
import type { JobContext } from "./proposal-context.ts";

/** More leaks than this stand in the sum below the table; the crew sheet has them all. */
const MOST_LEAKS = 12;
/** Share of the cooling that drying leaked-in air takes, from which on people feel it. Source: practice. */
const DAMP_SHARE = 0.03;
const DUSTY_PLACES: readonly PlaceKind[] = [
  "attic",
  "garage",
  "vented-crawlspace",
  "unvented-crawlspace",
  "basement",
  "belly",
];

export function foundSection(context: JobContext): Section {
  const { speaker, result, leaks } = context;
  const { totalCfm25, toOutsideCfm25, fractionOfFanFlow } = result.leakage;
  const outside = speaker.ranged(toOutsideCfm25, speaker.whole);
  const unfound = result.notYetFound.reduce((sum, { cfm25 }) => sum + cfm25.value, 0);
  const paragraphs = [
    `${speaker.say("found.test", { total: speaker.whole(totalCfm25.value) })} ${
      outside.doubt
        ? speaker.say("found.outside", { outside: outside.value, range: outside.doubt })
        : speaker.say("found.outsidePlain", { outside: outside.value })
    }`,
    [
      speaker.say("found.share", { share: speaker.percent(fractionOfFanFlow.value) }),
      speaker.say("found.count", { count: leaks.length }),
    ].join(" "),
  ];
  const missing: Block[] =
    unfound >= 1 ? [{ kind: "text", text: speaker.say("found.missing", { cfm: speaker.whole(unfound) }) }] : [];
  return {
    id: "found",
    title: speaker.say("found.title"),
    audience: "homeowner",
    blocks: [
      ...paragraphs.map((text): Block => ({ kind: "text", text })),
      ...(leaks.length > 0
        ? more(speaker.say("more.leaks"), [...missing, { kind: "table", table: leakTable(context) }])
        : missing),
    ],
  };
}

function leakTable({ speaker, leaks, result: found }: JobContext): DocumentTable {
  const unfound = found.notYetFound.reduce((total, { cfm25 }) => total + cfm25.value, 0);
  const ranked = [...leaks].sort((a, b) => b.result.cfm25.value - a.result.cfm25.value || a.number - b.number);
  const [shown, rest] = [ranked.slice(0, MOST_LEAKS), ranked.slice(MOST_LEAKS)];
  const sum = (of: (leak: (typeof rest)[number]) => number) => rest.reduce((total, leak) => total + of(leak), 0);
  return {
    caption: speaker.say("found.table"),
    columns: [
      { label: speaker.say("column.number"), isNumeric: true },
      { label: speaker.say("column.leak") },
      { label: speaker.say("column.where") },
      { label: speaker.say("column.leakage"), isNumeric: true },
      { label: speaker.say("column.costs"), isNumeric: true },
    ],
    rows: [
      ...shown.map(({ number, label, placeLabel, result }) => [
        String(number),
        label,
        placeLabel,
        speaker.whole(result.cfm25.value),
        speaker.usd(result.costUsdPerYear),
      ]),
      ...(rest.length > 0
        ? [
            [
              "",
              speaker.say("found.rest", { count: rest.length }),
              "",
              speaker.whole(sum(({ result }) => result.cfm25.value)),
              speaker.usd(sum(({ result }) => result.costUsdPerYear)),
            ],
          ]
        : []),
      ...(unfound >= 1 ? [["?", speaker.say("found.unfoundRow"), "", speaker.whole(unfound), ""]] : []),
    ],
  };
}

export function meansSection(context: JobContext): Section {
  const { speaker } = context;
  const main = mainMode(context);
  const other = main === "heating" ? "cooling" : "heating";
  const damp = dampShare(context);
  const dusty = dustyPlaces(context);
  return {
    id: "means",
    title: speaker.say("means.title"),
    audience: "homeowner",
    blocks: [
      ...splitBlocks(context, main),
      ...more(speaker.say("more.use", { use: speaker.say(`use.${other}`) }), splitBlocks(context, other)),
      ...(damp >= DAMP_SHARE ? [text(speaker.say("means.damp", { share: speaker.percent(damp) }))] : []),
      ...(dusty ? [text(speaker.say("means.dust", { place: dusty }))] : []),
      ...(isMostlyInside(context) ? [text(speaker.say("means.inside"))] : []),
    ],
  };
}

const text = (words: string): Block => ({ kind: "text", text: words });

function splitBlocks(context: JobContext, mode: Mode): Block[] {
  const { speaker, chosen } = context;
  const before = dollarSplit({ ...context, mode, when: "before" });
  const after = chosen ? dollarSplit({ ...context, mode, when: "after" }) : undefined;
  if (!before) return [];
  return [
    ...(before.regainedUsd >= 0.5
      ? [text(speaker.say("means.back", { use: speaker.say(`use.${mode}`), back: speaker.usd(before.regainedUsd) }))]
      : []),
    { kind: "picture", picture: { of: "hundred-dollars", input: { use: mode, before, after } } },
  ];
}

/** The largest share of cooling that any system spends on drying air that its return leaks pull in. */
export function dampShare({ result }: JobContext): number {
  return Math.max(
    0,
    ...result.systems.map(
      ({ distribution }) => distribution.cooling?.destinationBefore.lossesBy.returnMoistureShare ?? 0,
    ),
  );
}

/** Places from which return leaks draw air that people would rather not breathe; empty when there are none. */
export function dustyPlaces({ job, leaks, speaker, language }: JobContext): string {
  const kinds = leaks
    .filter(({ site }) => site.side === "return")
    .map(({ site }) => job.places.find(({ id }) => id === site.placeId)?.kind)
    .filter((kind) => kind !== undefined && DUSTY_PLACES.includes(kind));
  return speaker.list([...new Set(kinds)].map((kind) => placeName(language, kind!)));
}

function isMostlyInside({ result }: JobContext): boolean {
  const { totalCfm25, toOutsideCfm25 } = result.leakage;
  return totalCfm25.value > 0 && toOutsideCfm25.value / totalCfm25.value < 0.25;
}
