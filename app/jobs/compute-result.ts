import "server-only";
import { type AssumptionEffect, assumptionEffects } from "#lib/estimate/assumption-effects.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { exploreScopes, type ScopePoint } from "#lib/estimate/explore-scopes.ts";
import { contentHash } from "#lib/hash/content-hash.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { ScopeOption } from "#lib/job/result/plan-result.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import { sharedDrawPool } from "#lib/work/draw-pool.ts";
import { createHighsSolver } from "#lib/work/highs-solver.ts";

export const RESULT_DRAWS = 10_000;

/** Answers of this process by the hash of their job: a page looked at twice is calculated once. */
const MOST_KEPT = 60;

/** Keeps the newest answers of a calculation that gives equal jobs equal answers. */
function keepNewest<T>(compute: (job: Job) => Promise<T>): (job: Job) => Promise<T> {
  const kept = new Map<string, Promise<T>>();
  return (job) => {
    const hash = contentHash(job);
    const known = kept.get(hash);
    if (known) return known;
    const computing = compute(job);
    kept.set(hash, computing);
    computing.catch(() => kept.delete(hash));
    const oldest = kept.keys().next().value;
    if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
    return computing;
  };
}

/** The full result of a job: with the solver and all draws. */
export const computeResult = keepNewest(compute);

const computePointsOfChoice = keepNewest(async (job) => {
  const [reference, solve] = await Promise.all([loadReferenceData(job), createHighsSolver()]);
  return await exploreScopes(job, reference, { solve });
});

/** Every scope worth looking at, price against leakage left; what was picked makes no difference to them. */
export function computePoints(job: Job): Promise<ScopePoint[]> {
  const { chosenMeasures: _, chosenOptionId: __, ...plan } = job.plan ?? {};
  return computePointsOfChoice({ ...job, plan });
}

/** Enough for a range that one looks at before choosing; a choice gets all draws. */
const LOOK_DRAWS = 2_000;

const computePicked = keepNewest(async (job) => {
  const { scope } = await estimate(job, await loadReferenceData(job), {
    draws: LOOK_DRAWS,
    drawElsewhere: sharedDrawPool()?.draw,
  });
  return scope.options[0];
});

/** What a scope would be as the work of a job, with ranges: found only when somebody looks at it. */
export function computePoint(job: Job, { measures }: ScopePoint): Promise<ScopeOption | undefined> {
  const { chosenOptionId: _, ...plan } = job.plan ?? {};
  const chosenMeasures = measures.map(({ siteId, repairId }) => ({ siteId, repairId }));
  return computePicked({ ...job, plan: { ...plan, chosenMeasures } });
}

async function compute(job: Job): Promise<Result> {
  const [reference, solve] = await Promise.all([loadReferenceData(job), createHighsSolver()]);
  return await estimate(job, reference, { solve, draws: RESULT_DRAWS, drawElsewhere: sharedDrawPool()?.draw });
}

/** What each assumed value does to the yearly dollars of a result. */
export async function computeEffects(job: Job, result: Result): Promise<AssumptionEffect[]> {
  return await assumptionEffects({ job, result, reference: await loadReferenceData(job) });
}

/** The result as it stands beside the form, with no work chosen but the job's own: values alone, or with live ranges. */
export async function liveResult(job: Job, draws: number): Promise<Result> {
  return await estimate(job, await loadReferenceData(job), { draws, drawElsewhere: sharedDrawPool()?.draw });
}
