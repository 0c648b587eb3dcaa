import { refuse } from "#lib/errors/input-problem.ts";
import type { Cfm, Share } from "#lib/units/quantity.ts";

/** One retest of the firm's own: what was sealed how, and what the two tests say was removed. */
export interface SealingRetest {
  /** Leakage that each repair was put on, summed over its sites, and how many sites. */
  treated: readonly { repairId: string; cfm25: Cfm; sitesCount: number }[];
  removedCfm25: Cfm;
  /** Of the difference of the two tests. */
  standardUncertaintyCfm25: Cfm;
}

/** What is expected of a repair before own evidence: the catalogue's figures. */
export interface RepairBelief {
  repairId: string;
  remainingShare: Share;
  /** From one leak to the next. */
  remainingSpreadShare: Share;
}

export interface LearnedEffect extends RepairBelief {
  /** The catalogue's share, for comparison. */
  catalogueShare: Share;
  /** How well the mean share is known now. */
  shareStandardUncertainty: Share;
  retestsCount: number;
  sitesCount: number;
  /** 0: the catalogue alone; toward 1: the firm's own retests alone. */
  ownEvidenceShare: Share;
}

/** The catalogue weighs as much as this many sites of one's own. Source: own-method. */
const CATALOGUE_SITES_COUNT = 10;
/** No repair is known so well that its own retests could not move it at all. Source: own-method. */
const LEAST_SPREAD_SHARE = 0.01;

/**
 * The expected effect of each repair after the firm's own retests, shrunk toward the catalogue.
 * Prior: mean share f_r ~ N(catalogue, σ_r²/10). A retest says Σ Q_r (1 − f_r) = removed, with variance
 * u² + Σ Q_r² σ_r²/n_r, n_r the sites of repair r. Linear normal updating (Kalman form), one retest after another: with
 * one repair and exact tests the weight of n sites is n/(n + 10). Valid for shares of 0 to 1, to which the means are
 * held. Source: own-method (empirical Bayes, normal). Left out: how the spread from leak to leak itself is relearned.
 * @throws InputProblem on a retest with unusable numbers or a repair that is not in the catalogue.
 */
export function learnRepairEffects({
  catalogue,
  retests,
}: {
  catalogue: readonly RepairBelief[];
  retests: readonly SealingRetest[];
}): LearnedEffect[] {
  const beliefs = [...catalogue].sort((one, other) => (one.repairId < other.repairId ? -1 : 1));
  const positions = new Map(beliefs.map(({ repairId }, index) => [repairId, index]));
  const spreads = beliefs.map(({ remainingSpreadShare }) => Math.max(LEAST_SPREAD_SHARE, remainingSpreadShare));
  const means = beliefs.map(({ remainingShare }) => remainingShare);
  const priors = spreads.map((spread) => spread ** 2 / CATALOGUE_SITES_COUNT);
  const covariance = priors.map((variance, row) => priors.map((_, column) => (row === column ? variance : 0)));
  retests.forEach((retest, index) => {
    checkRetest(retest, index, positions);
    update({ retest, positions, spreads, means, covariance });
  });
  return beliefs.map((belief, index) => {
    const own = retests.filter(({ treated }) => treated.some(({ repairId }) => repairId === belief.repairId));
    const sites = own.flatMap(({ treated }) => treated.filter(({ repairId }) => repairId === belief.repairId));
    return {
      repairId: belief.repairId,
      remainingShare: Math.min(1, Math.max(0, means[index]!)),
      remainingSpreadShare: belief.remainingSpreadShare,
      catalogueShare: belief.remainingShare,
      shareStandardUncertainty: Math.sqrt(covariance[index]![index]!),
      retestsCount: own.length,
      sitesCount: sites.reduce((sum, { sitesCount }) => sum + sitesCount, 0),
      ownEvidenceShare: 1 - covariance[index]![index]! / priors[index]!,
    };
  });
}

function checkRetest(retest: SealingRetest, index: number, positions: ReadonlyMap<string, number>): void {
  const bad = (field: string, detail: string, fix: string) =>
    refuse({ field: `#/retests/${index}/${field}`, detail, fix });
  if (!Number.isFinite(retest.removedCfm25))
    bad("removedCfm25", "Must be a number", "Enter what the two tests say was removed.");
  if (!(retest.standardUncertaintyCfm25 > 0)) bad("standardUncertaintyCfm25", "Must be above 0", "No test is exact.");
  retest.treated.forEach(({ repairId, cfm25, sitesCount }, at) => {
    if (!positions.has(repairId))
      bad(`treated/${at}/repairId`, `${repairId} is not in the catalogue`, "Name a repair of the catalogue.");
    if (!(cfm25 >= 0 && cfm25 < 1e5))
      bad(`treated/${at}/cfm25`, "Must be 0 or more", "Enter the leakage at 25 Pa before the repair.");
    if (!(sitesCount >= 1)) bad(`treated/${at}/sitesCount`, "Must be 1 or more", "Count the leaks repaired this way.");
  });
}

/** One scalar observation of a linear combination of the shares. */
function update({
  retest,
  positions,
  spreads,
  means,
  covariance,
}: {
  retest: SealingRetest;
  positions: ReadonlyMap<string, number>;
  spreads: readonly number[];
  means: number[];
  covariance: number[][];
}): void {
  const flows = means.map(() => 0);
  let noise = retest.standardUncertaintyCfm25 ** 2;
  for (const { repairId, cfm25, sitesCount } of retest.treated) {
    const position = positions.get(repairId)!;
    flows[position]! += cfm25;
    noise += (cfm25 * spreads[position]!) ** 2 / sitesCount;
  }
  const crossed = covariance.map((row) => row.reduce((sum, value, column) => sum + value * flows[column]!, 0));
  const total = flows.reduce((sum, flow, index) => sum + flow * crossed[index]!, noise);
  const leftCfm25 = flows.reduce((sum, flow) => sum + flow, 0) - retest.removedCfm25;
  const surprise = leftCfm25 - flows.reduce((sum, flow, index) => sum + flow * means[index]!, 0);
  crossed.forEach((gain, row) => {
    means[row]! += (gain / total) * surprise;
    covariance[row] = covariance[row]!.map((value, column) => value - (gain * crossed[column]!) / total);
  });
}
