import type { ScopeOption } from "#lib/job/result/plan-result.ts";
import { type Block, more } from "../document-view.ts";
import type { JobContext } from "./proposal-context.ts";
import { rebateBlocks } from "./rebate-blocks.ts";

const TEST_TITLES: readonly string[] = ["Test before the work", "Test after the work"];

/** How a price is made up, to the cent, and how it is paid. Rebate and payback stand below it and never hide it. */
export function priceBlocks(context: JobContext, option: ScopeOption): Block[] {
  const { speaker, book, contractor, job } = context;
  const repairs = option.measures.reduce((sum, { priceUsdCents }) => sum + priceUsdCents, 0);
  const permitTitles = book.permits.map(({ title }) => title);
  const sumOf = (isMeant: (title: string) => boolean) =>
    option.priceLines
      .filter(({ title }) => isMeant(title))
      .reduce((sum, { amountUsdCents }) => sum + amountUsdCents, 0);
  const tests = sumOf((title) => TEST_TITLES.includes(title));
  const permits = sumOf((title) => permitTitles.includes(title));
  const parts = [
    [speaker.say("price.repairs"), repairs],
    [speaker.say("price.visits"), option.priceUsdCents - repairs - tests - permits],
    [speaker.say("price.test"), tests],
    [speaker.say("price.permits"), permits],
  ] as const;
  const madeUp: Block[] = [
    {
      kind: "table",
      table: {
        caption: speaker.say("options.table", { option: context.optionTitle(option) }),
        columns: [
          { label: speaker.say("column.part") },
          { label: `${speaker.say("column.amount")} ($)`, isNumeric: true },
        ],
        rows: [
          ...parts.filter(([, cents]) => cents !== 0).map(([label, cents]) => [label, exact(speaker.locale, cents)]),
          [speaker.say("price.total"), exact(speaker.locale, option.priceUsdCents)],
        ],
        hasTotal: true,
      },
    },
    text(speaker.say("price.beforeRebate")),
    ...rebateBlocks(context, option),
  ];
  return [
    ...(job.priceBook ? [] : [text(speaker.say("price.demo"))]),
    ...more(speaker.say(context.book.rebates.length > 0 ? "more.priceRebates" : "more.price"), madeUp),
    text(
      [
        sayPayback(context),
        contractor?.paymentTerms
          ? speaker.say("price.terms", { terms: contractor.paymentTerms })
          : speaker.say("price.termsOpen"),
      ].join(" "),
    ),
    ...sayFinanced(context, option),
  ];
}

const text = (words: string): Block => ({ kind: "text", text: words });

/** Two decimals in every row, so that the column adds up before the reader's eyes. */
function exact(locale: string, cents: number): string {
  return new Intl.NumberFormat(locale, { minimumFractionDigits: 2, maximumFractionDigits: 2 }).format(cents / 100);
}

function sayPayback({ speaker, result }: JobContext): string {
  const { simplePaybackYears, measureLifeYears } = result.economics;
  return simplePaybackYears !== null && simplePaybackYears <= measureLifeYears
    ? speaker.say("price.payback", { years: Math.max(1, Math.ceil(simplePaybackYears)) })
    : speaker.say("price.noPayback", { years: measureLifeYears });
}

/** Equal payments at the end of each month: price × i ÷ (1 − (1 + i)^−n), i the yearly rate over 12. */
function sayFinanced({ speaker, contractor }: JobContext, { priceUsdCents }: ScopeOption): Block[] {
  const { financing } = contractor ?? {};
  if (!financing) return [];
  const { lender, yearlyRate, monthsCount } = financing;
  const rate = yearlyRate / 12;
  const factor = rate > 0 ? rate / (1 - (1 + rate) ** -monthsCount) : 1 / monthsCount;
  const monthCents = Math.round(priceUsdCents * factor);
  return [
    text(
      speaker.say("price.financed", {
        lender,
        months: monthsCount,
        rate: new Intl.NumberFormat(speaker.locale, { style: "percent", maximumFractionDigits: 2 }).format(yearlyRate),
        month: speaker.cents(monthCents),
        total: speaker.cents(monthCents * monthsCount),
        price: speaker.cents(priceUsdCents),
      }),
    ),
  ];
}
