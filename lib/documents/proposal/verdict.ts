import type { ScopeOption } from "#lib/job/result/plan-result.ts";
import type { DocumentView, Notice } from "../document-view.ts";
import { instrumentNotices } from "../instrument-notices.ts";
import { dollarSplit, mainMode } from "./dollar-split.ts";
import { hasRange, highOf, type JobContext, lowOf } from "./proposal-context.ts";

type Head = Pick<DocumentView, "heading" | "lead" | "notices">;

/** The honest verdict, first of all: worth it or not, and why. */
export function verdictHead(context: JobContext): Head {
  const { speaker, result, chosen } = context;
  const { code } = result.scope.verdict;
  return {
    heading: speaker.say(`verdict.${code}`),
    lead: [
      ...sayShare(context),
      ...(chosen && code !== "not-worth-sealing" ? [sayPrice(context, chosen)] : []),
      chosen ? sayReason(context) : speaker.say("reason.nothing"),
      ...(code === "not-worth-sealing" && chosen ? [speaker.say("reason.advice")] : []),
    ],
    notices: headNotices(context),
  };
}

function sayShare(context: JobContext): string[] {
  const { speaker, result, chosen } = context;
  const mode = mainMode(context);
  const before = dollarSplit({ ...context, mode, when: "before" });
  const after = dollarSplit({ ...context, mode, when: "after" });
  if (!before) return [];
  const use = speaker.say(`use.${mode}`);
  const lost = speaker.usd(before.lostUsd);
  if (!after || !chosen || result.scope.verdict.code === "not-worth-sealing") {
    return [speaker.say("lead.today", { use, lost })];
  }
  return [speaker.say("lead.change", { use, lost, after: speaker.usd(after.lostUsd) })];
}

/** The plain price and the time, at once: what one asks next. */
function sayPrice({ speaker, hoursAtHouse }: JobContext, chosen: ScopeOption): string {
  const { hours, visits } = hoursAtHouse(chosen);
  return speaker.say("lead.price", {
    price: speaker.cents(chosen.priceUsdCents),
    hours: speaker.say("value.hours", { hours }),
    visits: speaker.say("value.visits", { count: visits }),
  });
}

/** Net savings over the years, in the words of the case; a loss is said as a loss. */
function sayReason({ speaker, result }: JobContext): string {
  const { netSavingsUsd: net, measureLifeYears: years } = result.economics;
  const say = (value: number) => speaker.usd(Math.abs(value));
  switch (result.scope.verdict.code) {
    case "worth-sealing":
      return hasRange(net)
        ? speaker.say("reason.ahead", { years, low: say(lowOf(net)), high: say(highOf(net)) })
        : speaker.say("reason.aheadPlain", { years, low: say(net.value) });
    case "marginal":
      return speaker.say("reason.either", { years, low: say(lowOf(net)), high: say(highOf(net)) });
    case "not-worth-sealing":
      return hasRange(net)
        ? speaker.say("reason.behind", { years, low: say(highOf(net)), high: say(lowOf(net)) })
        : speaker.say("reason.behindPlain", { years, low: say(net.value) });
  }
}

export function headNotices(context: JobContext): Notice[] {
  const { speaker, job, result } = context;
  return [
    ...(context.changes
      ? [
          {
            tone: "note" as const,
            title: context.speaker.say("change.title"),
            text: context.speaker.say("change.text", {
              ...context.changes.ordered[context.language],
              date: context.speaker.date(context.changes.acceptedOn),
            }),
          },
        ]
      : []),
    ...(job.isInvented
      ? [{ tone: "invented" as const, title: speaker.say("invented.title"), text: speaker.say("invented.text") }]
      : []),
    ...instrumentNotices(context),
    {
      tone: "note",
      title: speaker.say("estimate.title"),
      text: speaker.say(result.draws > 0 ? "estimate.text" : "estimate.textPlain"),
    },
  ];
}
