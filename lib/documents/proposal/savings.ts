import type { Savings } from "#lib/job/result/energy-result.ts";
import type { Ranged } from "#lib/job/result/ranged.ts";
import { type Block, type Figure, more, type Section } from "../document-view.ts";
import { monthSavedUsd } from "./dollar-split.ts";
import { dampShare, dustyPlaces } from "./findings.ts";
import { hasRange, type JobContext } from "./proposal-context.ts";

/** A change of a room's air that people notice. Source: practice. */
const CLEARLY_MORE = 0.1;
const MOST_ROOMS = 14;
/** Too little to be worth a line. */
const LEAST_FUEL = 0.5;

/** What the work was expected to save; once a retest is in, the promise and not the result. */
export function expectedSavings({ result }: JobContext): Savings {
  return result.promised?.savings ?? result.savings;
}

export function savingsSection(context: JobContext): Section {
  const { speaker, chosen } = context;
  const savings = expectedSavings(context);
  const year: Ranged = savings.costUsdPerYear;
  const comfort = comfortBlocks(context);
  return {
    id: "savings",
    title: speaker.say("savings.title"),
    audience: "homeowner",
    blocks: chosen
      ? [
          text(speaker.say("savings.lead")),
          { kind: "figures", items: moneyFigures(context, savings) },
          ...more(speaker.say("more.fuels"), [
            text(speaker.say("savings.months")),
            { kind: "figures", items: amountFigures(context, savings) },
            ...(hasRange(year) && year.p90! - year.p10! >= 10
              ? [
                  {
                    kind: "picture" as const,
                    picture: {
                      of: "savings-range" as const,
                      input: {
                        p10UsdPerYear: year.p10!,
                        p50UsdPerYear: year.p50 ?? year.value,
                        p90UsdPerYear: year.p90!,
                      },
                    },
                  },
                ]
              : []),
          ]),
          ...measureBlocks(context),
          ...comfort,
        ]
      : [text(speaker.say("propose.nothing"))],
  };
}

function moneyFigures(context: JobContext, savings: Savings): Figure[] {
  const { speaker } = context;
  const money = (label: string, value: Ranged): Figure => ({ label, ...speaker.ranged(value, speaker.usd) });
  return [
    money(speaker.say("savings.year"), savings.costUsdPerYear),
    money(speaker.say("savings.january"), monthSavedUsd({ ...context, month: 0 })),
    money(speaker.say("savings.july"), monthSavedUsd({ ...context, month: 6 })),
  ];
}

function amountFigures({ speaker }: JobContext, savings: Savings): Figure[] {
  const amount = (
    label: string,
    unit: "savings.kWh" | "savings.therms" | "savings.gallons" | "savings.pounds",
    value: Ranged,
  ): Figure[] =>
    Math.abs(value.value) < LEAST_FUEL
      ? []
      : [{ label, ...speaker.ranged(value, (each) => speaker.say(unit, { value: speaker.whole(each) })) }];
  return [
    ...amount(speaker.say("savings.electricity"), "savings.kWh", savings.electricityKWh),
    ...amount(speaker.say("savings.naturalGas"), "savings.therms", savings.naturalGasTherms),
    ...amount(speaker.say("savings.propane"), "savings.gallons", savings.propaneGallons),
    ...amount(speaker.say("savings.fuelOil"), "savings.gallons", savings.fuelOilGallons),
    ...amount(speaker.say("savings.carbon"), "savings.pounds", savings.co2LbPerYear),
  ];
}

/** What the other measures of the plan save beside the ducts, each at its turn; nothing where there are none. */
function measureBlocks({ speaker, result }: JobContext): Block[] {
  const { measuresInOrder: measures } = result;
  if (!measures) return [];
  return more(speaker.say("more.measures"), [
    {
      kind: "table",
      table: {
        caption: speaker.say("savings.measures"),
        columns: [{ label: speaker.say("savings.measure") }, { label: speaker.say("savings.year"), isNumeric: true }],
        rows: [
          ...measures.turns.map(({ kind, title, costUsdPerYear }) => [
            kind === "ducts" ? speaker.say("savings.ducts") : title,
            speaker.usd(costUsdPerYear),
          ]),
          [speaker.say("savings.together"), speaker.usd(measures.together.costUsdPerYear)],
        ],
      },
    },
    text(speaker.say("savings.measuresNote")),
  ]);
}

/** Rooms that get better and rooms that do not, by the air of each supply run. */
function comfortBlocks(context: JobContext): Block[] {
  const { speaker, job, result } = context;
  const rooms = job.systems.flatMap((system) =>
    system.runs
      .filter(({ side }) => side === "supply")
      .flatMap(({ id, label }) => {
        const air = result.systems.find((found) => found.id === system.id)?.runs.find((run) => run.id === id);
        if (!air || !(air.airBeforeCfm > 0)) return [];
        const name = job.systems.length > 1 ? `${label ?? id} (${system.label})` : (label ?? id);
        return [
          { name, before: air.airBeforeCfm, after: air.airAfterCfm, gain: air.airAfterCfm / air.airBeforeCfm - 1 },
        ];
      }),
  );
  if (rooms.length === 0) return [];
  const inOrder = [...rooms].sort((a, b) => b.gain - a.gain);
  const shown = inOrder.slice(0, MOST_ROOMS);
  const dusty = dustyPlaces(context);
  return [
    { kind: "subheading", text: speaker.say("comfort.title") },
    ...COMFORT_KINDS.flatMap((kind) => {
      const names = inOrder.filter(({ gain }) => comfortOf(gain) === kind).map(({ name }) => name);
      return names.length === 0 ? [] : [text(speaker.say(`comfort.${kind}Rooms`, { rooms: speaker.list(names) }))];
    }),
    ...(dampShare(context) >= 0.03 ? [text(speaker.say("comfort.dampYes"))] : []),
    ...(dusty ? [text(speaker.say("comfort.dustYes", { place: dusty }))] : []),
    ...more(speaker.say("more.rooms"), [
      text(speaker.say("comfort.lead")),
      {
        kind: "table",
        table: {
          caption: speaker.say("comfort.table"),
          columns: [
            { label: speaker.say("column.room") },
            { label: speaker.say("column.today"), isNumeric: true },
            { label: speaker.say("column.after"), isNumeric: true },
            { label: speaker.say("column.change") },
          ],
          rows: shown.map(({ name, before, after, gain }) => [
            name,
            speaker.whole(before),
            speaker.whole(after),
            speaker.say(`comfort.${comfortOf(gain)}`),
          ]),
        },
      },
    ]),
  ];
}

const COMFORT_KINDS = ["better", "little", "less"] as const;

const comfortOf = (gain: number): (typeof COMFORT_KINDS)[number] =>
  gain >= CLEARLY_MORE ? "better" : gain <= -CLEARLY_MORE ? "less" : "little";

export function nothingSection({ speaker, result }: JobContext): Section {
  const { doingNothingUsdPerYear: yearly, measureLifeYears: years } = result.economics;
  const { value, doubt } = speaker.ranged(yearly, speaker.usd);
  const isSmall = result.scope.verdict.code === "not-worth-sealing";
  return {
    id: "nothing",
    title: speaker.say("nothing.title"),
    audience: "homeowner",
    blocks: [
      text(
        doubt
          ? speaker.say("nothing.leadRange", { usd: value, range: doubt })
          : speaker.say("nothing.lead", { usd: value }),
      ),
      text(
        [
          isSmall
            ? speaker.say("nothing.small")
            : speaker.say("nothing.years", { years, usd: speaker.usd(yearly.value * years) }),
          speaker.say("nothing.note"),
        ].join(" "),
      ),
    ],
  };
}

const text = (words: string): Block => ({ kind: "text", text: words });
