import type { Rebate } from "#lib/job/price-book-schema.ts";
import type { ScopeOption } from "#lib/job/result/plan-result.ts";
import { type RebateLine, rebatesFor, type SealingOutcome } from "#lib/scope/rebates.ts";
import type { Block } from "../document-view.ts";
import type { MessageKey } from "../messages/en.ts";
import type { JobContext } from "./proposal-context.ts";

/**
 * What an option should leave of both leakages. The share that a repair takes of its leak is the same for both; where a
 * leak has none of the leakage that the goal counts, nothing is counted of the other, so a rebate is never overstated.
 */
function expectedOutcome({ result }: JobContext, { measures }: ScopeOption): SealingOutcome {
  const counted = result.scope.target?.measure === "to-outside" ? "toOutsideCfm25" : "cfm25";
  const removed = measures.map(({ siteId, removesCfm25 }) => {
    const site = result.sites.find(({ id }) => id === siteId);
    const system = result.systems.find(({ id }) => id === siteId)?.leakage;
    const leak = site ?? (system && { cfm25: system.totalCfm25, toOutsideCfm25: system.toOutsideCfm25 });
    const share = leak && leak[counted].value > 0 ? Math.min(1, removesCfm25 / leak[counted].value) : 0;
    return { total: share * (leak?.cfm25.value ?? 0), toOutside: share * (leak?.toOutsideCfm25.value ?? 0) };
  });
  const outcome = (before: number, key: "total" | "toOutside") => ({
    beforeCfm25: before,
    afterCfm25: Math.max(0, before - removed.reduce((sum, each) => sum + each[key], 0)),
  });
  const { totalCfm25, toOutsideCfm25 } = result.leakage;
  return {
    total: outcome(totalCfm25.value, "total"),
    toOutside: outcome(toOutsideCfm25.value, "toOutside"),
    basis: "predicted",
  };
}

const rebatesOf = (context: JobContext, option: ScopeOption): RebateLine[] =>
  rebatesFor({
    book: context.book,
    priceUsdCents: option.priceUsdCents,
    outcome: expectedOutcome(context, option),
  });

/** The conditions of a rebate as its payer set them, and that the second test decides. */
function rulesOf({ speaker }: JobContext, { conditions, conditionText }: Rebate): string {
  const measure = speaker.say(`measure.${conditions.measure}` satisfies MessageKey);
  const { leastRemovedShare, leastRemovedCfm25, mostLeftCfm25 } = conditions;
  const rules = [
    ...(leastRemovedShare === undefined
      ? []
      : [speaker.say("rebate.leastShare", { share: speaker.percent(leastRemovedShare), measure })]),
    ...(leastRemovedCfm25 === undefined
      ? []
      : [speaker.say("rebate.leastCfm", { cfm: speaker.number(leastRemovedCfm25), measure })]),
    ...(mostLeftCfm25 === undefined
      ? []
      : [speaker.say("rebate.mostLeft", { cfm: speaker.number(mostLeftCfm25), measure })]),
    speaker.say("rebate.shown"),
    ...(conditionText ? [conditionText] : []),
  ];
  return rules.join("; ");
}

/** Each rebate with its amount and its rules, beside the plain prices and never taken off them. */
export function rebateBlocks(context: JobContext, chosen: ScopeOption): Block[] {
  const { speaker, book, result } = context;
  if (book.rebates.length === 0) return [];
  const lines = rebatesOf(context, chosen);
  const inOrder = [...result.scope.options].sort((one, other) => one.priceUsdCents - other.priceUsdCents);
  const sumOf = (rebates: readonly RebateLine[]) =>
    rebates.reduce((sum, { amountUsdCents }) => sum + amountUsdCents, 0);
  return [
    ...book.rebates.map((rebate): Block => {
      const { amountUsdCents } = lines.find(({ id }) => id === rebate.id)!;
      const values = { title: rebate.title, rules: rulesOf(context, rebate) };
      return {
        kind: "text",
        text:
          amountUsdCents > 0
            ? speaker.say("price.rebate", { ...values, amount: speaker.cents(amountUsdCents) })
            : speaker.say("price.rebateNone", values),
      };
    }),
    {
      kind: "table",
      table: {
        caption: speaker.say("price.rebates"),
        columns: [
          { label: speaker.say("column.option") },
          { label: speaker.say("column.price"), isNumeric: true },
          { label: speaker.say("column.rebate"), isNumeric: true },
        ],
        rows: inOrder.map((option) => [
          context.optionTitle(option),
          speaker.cents(option.priceUsdCents),
          speaker.cents(sumOf(rebatesOf(context, option))),
        ]),
      },
    },
  ];
}
