import type { ScopePoint } from "#lib/estimate/explore-scopes.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { LEAK_KINDS } from "#lib/job/leak-kinds.ts";
import type { ScopeOption } from "#lib/job/result/plan-result.ts";
import { formatNumber, formatPercent, formatUsd, formatUsdCents } from "#lib/units/format.ts";
import type { UnitText } from "#lib/units/unit-text.ts";

/** A scope as its card shows it. */
export interface ScopeCardWords {
  id: string;
  title: string;
  summary: string;
  isChosen: boolean;
  price: string;
  lines: readonly { label: string; value: string }[];
  /** Whether it is proven that none is better for its aim. */
  proof: string;
  does: readonly string[];
  leaves: readonly string[];
  measures: readonly { siteId: string; repairId: string }[];
}

interface Told {
  job: Job;
  text: UnitText;
  hasTarget: boolean;
  isChosen: boolean;
}

const between = (low: number | undefined, high: number | undefined, say: (value: number) => string): string =>
  low === undefined || high === undefined || say(low) === say(high) ? "" : ` (${say(low)} to ${say(high)})`;

function leakWords(job: Job, siteId: string): string {
  const index = job.sites.findIndex(({ id }) => id === siteId);
  const site = job.sites[index];
  if (!site) return job.systems.find(({ id }) => id === siteId)?.label ?? siteId;
  return `${index + 1}. ${site.label ?? LEAK_KINDS[site.kind].label}`;
}

/** What a measure has to do with others: first, not together with, left to it. */
function relationWords(job: Job, measure: ScopePoint["measures"][number]): string[] {
  const named = (siteIds: readonly string[]) => siteIds.map((id) => leakWords(job, id)).join("; ");
  const { firstSiteIds = [], togetherWithSiteIds = [], notByHandSiteIds = [] } = measure;
  return [
    ...(firstSiteIds.length > 0 ? [`First ${named(firstSiteIds)}`] : []),
    ...(togetherWithSiteIds.length > 0
      ? [`Together with ${named(togetherWithSiteIds)}, and not with another repair there`]
      : []),
    ...(notByHandSiteIds.length > 0 ? [`Not together with sealing by hand at ${named(notByHandSiteIds)}`] : []),
  ];
}

function commonWords(
  { job, text, isChosen }: Told,
  scope: Pick<
    ScopeOption,
    "labourHours" | "probabilityOfReachingTarget" | "priceUsdCents" | "leavesUndone" | "provenOptimal"
  > & {
    measures: readonly ScopePoint["measures"][number][];
    gapRatio?: number | null | undefined;
    left: { value: number; low: number | undefined; high: number | undefined };
  },
) {
  const cfm = (value: number) => text.number(value, "cfm");
  return {
    isChosen,
    price: formatUsdCents(scope.priceUsdCents),
    lines: [
      {
        label: `Leaves, ${text.unit("cfm")} at 25 Pa`,
        value: cfm(scope.left.value) + between(scope.left.low, scope.left.high, cfm),
      },
      ...(scope.probabilityOfReachingTarget === null
        ? []
        : [{ label: "Chance to reach the target", value: chanceWords(scope.probabilityOfReachingTarget) }]),
      { label: "Person hours", value: formatNumber(scope.labourHours) },
    ],
    does: scope.measures.map((measure) =>
      [`${leakWords(job, measure.siteId)}: ${measure.title}`, ...relationWords(job, measure)].join(". "),
    ),
    leaves: scope.leavesUndone.map(({ siteId, why }) => `${leakWords(job, siteId)}. ${why}`),
    measures: scope.measures.map(({ siteId, repairId }) => ({ siteId, repairId })),
  };
}

/** Never as sure as 0 or 100. */
function chanceWords(probability: number): string {
  if (probability > 0.995) return "over 99%";
  return probability < 0.005 ? "under 1%" : formatPercent(probability);
}

function proofWords(isProven: boolean, gapRatio: number | null | undefined, aim: string): string {
  if (isProven) return `Proven: ${aim}.`;
  if (gapRatio === null || gapRatio === undefined) return "Picked, so no search stands behind it.";
  return `Not proven: at most ${formatPercent(gapRatio)} from the best there can be.`;
}

const AIMS: Readonly<Record<string, string>> = {
  essential: "nothing cheaper has half of the effect",
  target: "nothing cheaper reaches the target as surely",
  everything: "nothing saves more beyond its price",
  closest: "nothing gets closer to the target",
  limited: "nothing seals more within the limits",
};

/** An option of the estimate. */
export function optionWords(option: ScopeOption, told: Told): ScopeCardWords {
  const { lines, ...common } = commonWords(told, {
    ...option,
    left: {
      value: option.predictedCfm25.value,
      low: option.predictedCfm25.p10,
      high: option.predictedCfm25.p90,
    },
  });
  return {
    ...common,
    id: option.id,
    title: option.title,
    summary: `${option.summary}.`,
    proof: proofWords(option.provenOptimal, option.gapRatio, AIMS[option.id] ?? "nothing is better for its aim"),
    lines: [savesLine(option), ...lines],
  };
}

function savesLine({ savedUsdPerYear: { value, p10, p90 } }: ScopeOption) {
  const usd = (each: number) => formatUsd(each);
  return { label: "Saves a year", value: usd(value) + between(p10, p90, usd) };
}

/** A point in one line: its price, what it leaves and the chance to reach the target. */
export function pointGist(
  { priceUsdCents, predictedCfm25, probabilityOfReachingTarget }: ScopePoint,
  { text }: Pick<Told, "text">,
): string {
  return [
    formatUsdCents(priceUsdCents),
    `leaves ${text.quantity(predictedCfm25, "cfm")}`,
    ...(probabilityOfReachingTarget === null
      ? []
      : [`${chanceWords(probabilityOfReachingTarget)} to reach the target`]),
  ].join(", ");
}

/** A point of the drawing; with the ranges that it has as the work of the job, where they were worked out. */
export function pointWords(point: ScopePoint, told: Told, asWork?: ScopeOption): ScopeCardWords {
  const { lines, ...common } = commonWords(told, {
    ...point,
    leavesUndone: point.leavesUndone.map(({ siteId, why }) => ({ siteId, why })),
    left: { value: point.predictedCfm25, low: asWork?.predictedCfm25.p10, high: asWork?.predictedCfm25.p90 },
  });
  return {
    ...common,
    id: pointId(point),
    title: `Point ${point.id}`,
    summary: "None is both cheaper and tighter.",
    proof: proofWords(point.provenOptimal, point.gapRatio, "nothing is better at its price"),
    lines: [
      ...(asWork ? [savesLine(asWork)] : []),
      { label: "Saves over its life", value: formatUsd(point.lifetimeValueUsd) },
      ...lines,
    ],
  };
}

export const pointId = ({ id }: Pick<ScopePoint, "id">): string => `point-${id}`;
