import { type AssumptionEffect, spreadOf } from "#lib/estimate/assumption-effects.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { Assumption, Warning } from "#lib/job/result/evidence-result.ts";
import type { Ranged } from "#lib/job/result/ranged.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { type HouseScene, houseSectionScene } from "#lib/pictures/house/house-section.ts";
import { hundredDollarsScene } from "#lib/pictures/hundred-dollars.ts";
import { houseSectionOfResult } from "#lib/pictures/of-result/house-section-of-result.ts";
import { hundredDollarsOfMode } from "#lib/pictures/of-result/hundred-dollars-of-mode.ts";
import { COMPACT_WIDTH, type Scene, type SceneOptions, WIDE_WIDTH } from "#lib/pictures/scene.ts";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import { formatPercent, formatUsd } from "#lib/units/format.ts";
import { sentenceInSystem } from "#lib/units/sentence-in-system.ts";
import { type UnitText, unitText } from "#lib/units/unit-text.ts";
import { effectWords } from "./effect-words.ts";
import { stepOfPath } from "./missing.ts";
import { sayNumber, sayValue } from "./said-value.ts";
import { TRIP_STEPS, type TripStepId } from "./trip-steps.ts";
import { warningIn } from "./warning-in.ts";

/** Enough for a range that stands still to two figures, and quick enough to follow typing. */
export const LIVE_DRAWS = 2000;

/** The answer as it stands beside the form: plain data, so that the worker, the server and the page share it. */
export interface Answer {
  /** Empty until there is a reading or a leak: before that a number would only be a guess about nothing. */
  stats: readonly AnswerStat[];
  bar: readonly { id: string; label: string; value: string }[];
  house: DrawnScene<HouseScene>;
  dollars?: DrawnScene;
  verdict?: string;
  /** What stands in for a field that was left out, by its path. */
  assumptions: Readonly<Record<string, AssumedValue>>;
  /** Half the range, in dollars a year, that the open answers of a step are worth. */
  openUsdPerYear: Readonly<Partial<Record<TripStepId, number>>>;
  notes: readonly Warning[];
  narrowMost: string | null;
  draws: number;
}

export interface AnswerStat {
  id: string;
  label: string;
  value: string;
  unit?: string;
  doubt?: string;
}

export interface DrawnScene<Kind extends Scene = Scene> {
  wide: Kind;
  compact: Kind;
}

export interface AssumedValue {
  text: string;
  reason: string;
  /** What it does to the dollars, once that is worked out. */
  effect?: string;
}

/** The doubt of a number in words: "could be 190 to 430". Silent while no draws were made. */
export function doubtWords({ p10, p90 }: Ranged, format: (value: number) => string): string | undefined {
  if (p10 === undefined || p90 === undefined) return undefined;
  const [low, high] = [format(p10), format(p90)];
  return low === high ? undefined : `could be ${low} to ${high}`;
}

/** All that stands beside the form, said in the units of whoever fills it in. */
export function buildAnswer({
  job,
  result,
  units,
  effects = [],
}: {
  job: Job;
  result: Result;
  units: UnitSystem;
  effects?: readonly AssumptionEffect[];
}): Answer {
  const { leakage, savings, economics, scope } = result;
  const text = unitText(units);
  const cfm = (value: number) => text.number(value, "cfm");
  const draw = <Kind extends Scene>(build: (options: SceneOptions) => Kind): DrawnScene<Kind> => ({
    wide: build({ width: WIDE_WIDTH, units }),
    compact: build({ width: COMPACT_WIDTH, units }),
  });
  const hasEvidence = job.tests.length > 0 || job.sites.length > 0;
  const mode = hasEvidence ? leadingMode(result) : undefined;
  const lost = mode?.mode.destinationBefore;
  const hasWork = scope.options.length > 0;
  const saved = hasWork ? savings.costUsdPerYear : economics.doingNothingUsdPerYear;
  const sizes = result.draws > 0 ? "" : "…";
  const stats: AnswerStat[] = [
    {
      id: "total",
      label: "Leakage at 25 Pa",
      value: cfm(leakage.totalCfm25.value),
      unit: text.unit("cfm"),
      doubt: doubtWords(leakage.totalCfm25, cfm) ?? sizes,
    },
    {
      id: "outside",
      label: "Of it to outside",
      value: cfm(leakage.toOutsideCfm25.value),
      unit: text.unit("cfm"),
      doubt: doubtWords(leakage.toOutsideCfm25, cfm) ?? sizes,
    },
    ...(mode
      ? [
          {
            id: "rooms",
            label: mode.use === "heating" ? "Heat that reaches the rooms" : "Cold that reaches the rooms",
            value: formatPercent(mode.mode.destinationBefore.roomsShare),
            doubt: "over the season",
          },
        ]
      : []),
    {
      id: "saved",
      label: hasWork ? "Saved by sealing" : "What the leaks cost",
      value: formatUsd(saved.value),
      unit: "a year",
      doubt: doubtWords(saved, formatUsd) ?? (hasWork ? sizes : "all leaks closed"),
    },
  ];
  return {
    stats: hasEvidence ? stats : [],
    bar: hasEvidence
      ? [
          { id: "total", label: "at 25 Pa", value: text.quantity(leakage.totalCfm25.value, "cfm") },
          lost
            ? { id: "lost", label: "lost", value: formatPercent(lost.outsideShare) }
            : { id: "outside", label: "to outside", value: text.quantity(leakage.toOutsideCfm25.value, "cfm") },
          { id: "saved", label: hasWork ? "saved a year" : "cost a year", value: formatUsd(saved.value) },
        ]
      : [],
    house: draw((options) => houseSectionScene(houseSectionOfResult({ job, result, when: "before" }), options)),
    ...(mode
      ? { dollars: draw((options) => hundredDollarsScene(hundredDollarsOfMode({ ...mode, hasWork }), options)) }
      : {}),
    ...(hasWork ? { verdict: sentenceInSystem(scope.verdict.reason, units) } : {}),
    assumptions: Object.fromEntries(
      result.assumptions.map((each) => [
        each.path.replace(/^#\//, ""),
        assumedValue(
          each,
          text,
          effects.find(({ path }) => path === each.path),
        ),
      ]),
    ),
    openUsdPerYear: openDollars(effects),
    notes: result.warnings.map((warning) => warningIn(units, warning)),
    narrowMost: result.narrowMost,
    draws: result.draws,
  };
}

/** The season that loses more, of the system that loses more: the one worth a picture. */
function leadingMode({ systems }: Result) {
  const modes = systems.flatMap(({ distribution: { heating, cooling } }) => [
    ...(heating ? [{ use: "heating" as const, mode: heating }] : []),
    ...(cooling ? [{ use: "cooling" as const, mode: cooling }] : []),
  ]);
  return modes.sort((a, b) => a.mode.destinationBefore.roomsShare - b.mode.destinationBefore.roomsShare)[0];
}

function assumedValue(
  { path, value, unit, low, high, reason }: Assumption,
  text: UnitText,
  effect?: AssumptionEffect,
): AssumedValue {
  const say = (number: number) => sayNumber({ path, value: number, unit }, text);
  const range = low === undefined || high === undefined ? "" : `, could be ${say(low)} to ${say(high)}`;
  return {
    text: `${sayValue({ path, value, unit }, text)}${range}`,
    reason: sentenceInSystem(reason, text.system),
    ...(effect ? { effect: effectWords(effect) } : {}),
  };
}

function openDollars(effects: readonly AssumptionEffect[]): Partial<Record<TripStepId, number>> {
  return Object.fromEntries(
    TRIP_STEPS.map((step) => [step, spreadOf(effects.filter(({ path }) => stepOfPath(path.slice(2)) === step)) / 2]),
  );
}
