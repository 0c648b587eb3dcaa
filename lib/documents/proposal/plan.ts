import type { ScopeOption } from "#lib/job/result/plan-result.ts";
import { priceFrontierOf } from "#lib/pictures/of-result/charts-of-result.ts";
import { type Block, type DocumentTable, more, type OptionCard, type Section } from "../document-view.ts";
import { repairName } from "../messages/names.ts";
import { priceBlocks } from "./price-blocks.ts";
import { highOf, type JobContext, lowOf } from "./proposal-context.ts";

export function proposeSection(context: JobContext): Section {
  const { speaker, chosen } = context;
  const blocks: Block[] = chosen ? proposeBlocks(context, chosen) : [text(speaker.say("propose.nothing"))];
  return { id: "propose", title: speaker.say("propose.title"), audience: "homeowner", blocks };
}

function proposeBlocks(context: JobContext, chosen: ScopeOption): Block[] {
  const { speaker, result, measureName } = context;
  const after = speaker.ranged(chosen.predictedCfm25, speaker.whole);
  const advised = speaker.say("propose.count", {
    option: context.optionTitle(chosen),
    count: fixedLeaks(context, chosen).length,
  });
  return [
    text(
      result.scope.verdict.code === "not-worth-sealing"
        ? speaker.say("propose.notAdvised", { option: context.optionTitle(chosen) })
        : advised,
    ),
    text(
      after.doubt
        ? speaker.say("propose.expect", { cfm: after.value, measure: measureName, range: after.doubt })
        : speaker.say("propose.expectPlain", { cfm: after.value, measure: measureName }),
    ),
    ...more(speaker.say("more.work"), [{ kind: "table", table: workTable(context, chosen) }]),
  ];
}

function workTable(context: JobContext, option: ScopeOption): DocumentTable {
  const { speaker, leaks, language } = context;
  const rows = option.measures
    .map((measure) => ({ measure, leak: leaks.find(({ site }) => site.id === measure.siteId) }))
    .sort((a, b) => (a.leak?.number ?? 0) - (b.leak?.number ?? 0));
  return {
    caption: speaker.say("propose.table", { option: context.optionTitle(option) }),
    columns: [
      { label: speaker.say("column.number"), isNumeric: true },
      { label: speaker.say("column.leak") },
      { label: speaker.say("column.repair") },
    ],
    rows: rows.map(({ measure, leak }) => [
      leak ? String(leak.number) : "",
      leak ? `${leak.label}, ${leak.placeLabel}` : speaker.say("propose.system"),
      repairName(language, measure.repairId, measure.title),
    ]),
  };
}

export function optionsSection(context: JobContext): Section {
  const { speaker, result } = context;
  const { options } = result.scope;
  const [first] = options;
  const inOrder = [...options].sort((a, b) => a.priceUsdCents - b.priceUsdCents);
  return {
    id: "options",
    title: speaker.say("options.title"),
    audience: "homeowner",
    blocks: [
      text(speaker.say("options.lead")),
      { kind: "options", options: [...inOrder.map((option) => optionCard(context, option)), nothingCard(context)] },
      ...more(speaker.say("more.steps"), [...sayNextSteps(context, inOrder), ...frontierBlocks(context)]),
      ...(context.chosen ? priceBlocks(context, context.chosen) : []),
      ...more(speaker.say("more.undone"), [
        ...numbersBlocks(context, inOrder),
        ...(first && options.length > 1 ? compareBlocks(context, inOrder) : []),
        ...inOrder.flatMap((option) => undoneBlocks(context, option)),
      ]),
    ],
  };
}

function optionCard(context: JobContext, option: ScopeOption): OptionCard {
  const { speaker, result } = context;
  const saved = speaker.usd(option.savedUsdPerYear.value);
  const [low, high] = [speaker.usd(lowOf(option.savedUsdPerYear)), speaker.usd(highOf(option.savedUsdPerYear))];
  const { hours, visits } = context.hoursAtHouse(option);
  return {
    id: option.id,
    title: context.optionTitle(option),
    summary: speaker.sayIfKnown(`summary.${option.id}`) ?? option.summary,
    isRecommended: option.id === context.chosen?.id && result.scope.verdict.code !== "not-worth-sealing",
    recommendedLabel: speaker.say("options.recommended"),
    price: speaker.cents(option.priceUsdCents),
    lines: [
      {
        label: speaker.say("line.saves"),
        value: low === high ? saved : `${saved} (${speaker.say("value.range", { low, high })})`,
      },
      ...(option.probabilityOfReachingTarget === null
        ? []
        : [{ label: speaker.say("line.chance"), value: speaker.chance(option.probabilityOfReachingTarget) }]),
      {
        label: speaker.say("line.hours"),
        value: `${speaker.say("value.hours", { hours })}, ${speaker.say("value.visits", { count: visits })}`,
      },
    ],
  };
}

function nothingCard({ speaker, result, leaks }: JobContext): OptionCard {
  return {
    id: "nothing",
    title: speaker.say("option.nothing"),
    summary: speaker.say("summary.nothing"),
    isRecommended: result.scope.verdict.code === "not-worth-sealing",
    recommendedLabel: speaker.say("options.recommended"),
    price: speaker.cents(0),
    lines: [
      { label: speaker.say("line.costs"), value: speaker.usd(result.economics.doingNothingUsdPerYear.value) },
      { label: speaker.say("line.leaves"), value: speaker.say("value.leaks", { count: leaks.length }) },
    ],
  };
}

/** Price against leaks left, where there is a choice to see. */
function frontierBlocks(context: JobContext): Block[] {
  const input = priceFrontierOf(context.result);
  if (!input || input.points.length < 2) return [];
  const titles = new Map(context.result.scope.options.map((option) => [option.id, context.optionTitle(option)]));
  const points = input.points.map((point) => ({ ...point, label: titles.get(point.id) ?? point.label }));
  return [{ kind: "picture", picture: { of: "price-frontier", input: { ...input, points } } }];
}

/** What each dearer option costs and saves beyond the one before it. */
function sayNextSteps({ speaker, optionTitle }: JobContext, inOrder: readonly ScopeOption[]): Block[] {
  return inOrder.slice(1).map((option, index) => {
    const before = inOrder[index]!;
    const saved = option.savedUsdPerYear.value - before.savedUsdPerYear.value;
    const values = {
      option: optionTitle(option),
      before: optionTitle(before),
      price: speaker.cents(option.priceUsdCents - before.priceUsdCents),
    };
    return text(
      saved >= 0.5
        ? speaker.say("options.step", { ...values, saved: speaker.usd(saved) })
        : speaker.say("options.stepLess", values),
    );
  });
}

/** A leak is fixed by a repair of its own or by one that reaches its whole system and does not name it as left. */
function fixedLeaks({ leaks }: JobContext, option: ScopeOption) {
  const left = new Set(option.leavesUndone.map(({ siteId }) => siteId));
  return leaks.filter(({ site }) => !left.has(site.id));
}

/** What the cards leave out: how many leaks each option fixes, and what is left to leak. */
function numbersBlocks(context: JobContext, options: readonly ScopeOption[]): Block[] {
  const { speaker, leaks, measureName } = context;
  if (options.length === 0) return [];
  return [
    {
      kind: "table",
      table: {
        caption: speaker.say("options.numbers"),
        columns: [
          { label: speaker.say("column.option") },
          { label: speaker.say("line.fixes"), isNumeric: true },
          { label: `${speaker.say("line.left", { measure: measureName })} (cfm)`, isNumeric: true },
        ],
        rows: options.map((option) => [
          context.optionTitle(option),
          speaker.say("value.fixed", { fixed: fixedLeaks(context, option).length, count: leaks.length }),
          speaker.whole(option.predictedCfm25.value),
        ]),
      },
    },
  ];
}

function compareBlocks(context: JobContext, options: readonly ScopeOption[]): Block[] {
  const { speaker, leaks } = context;
  return [
    {
      kind: "table",
      table: {
        caption: speaker.say("options.compare"),
        columns: [
          { label: speaker.say("column.number"), isNumeric: true },
          { label: speaker.say("column.leak") },
          ...options.map((option) => ({ label: context.optionTitle(option) })),
        ],
        rows: leaks.map(({ number, label, site }) => [
          String(number),
          label,
          ...options.map(({ leavesUndone }) =>
            speaker.say(leavesUndone.some(({ siteId }) => siteId === site.id) ? "options.left" : "options.fixed"),
          ),
        ]),
      },
    },
  ];
}

/** What an option leaves as it is, and why: the reason follows from what the option was chosen for. */
function undoneBlocks(context: JobContext, option: ScopeOption): Block[] {
  const { speaker, leaks } = context;
  const undone = leaks.filter(({ site }) => option.leavesUndone.some(({ siteId }) => siteId === site.id));
  const asbestos = undone.filter(({ site }) => site.isSuspectedAsbestos);
  const others = undone.filter(({ site }) => !site.isSuspectedAsbestos);
  const name = (group: typeof undone) =>
    speaker.say("undone.leaks", {
      count: group.length,
      list: speaker.list(group.map(({ number }) => String(number))),
    });
  const why = (group: typeof undone): string => {
    const key = `undone.${option.id}`;
    return speaker.hasMessage(key)
      ? speaker.say(key, { leaks: name(group) })
      : option.leavesUndone.map(({ siteId, why }) => `${siteId}: ${why}`).join(". ");
  };
  return [
    { kind: "subheading", text: speaker.say("undone.title", { option: context.optionTitle(option) }) },
    ...(undone.length === 0 ? [text(speaker.say("undone.none"))] : []),
    ...(others.length > 0 ? [text(why(others))] : []),
    ...(asbestos.length > 0 ? [text(speaker.say("undone.asbestos", { leaks: name(asbestos) }))] : []),
  ];
}

const text = (words: string): Block => ({ kind: "text", text: words });
