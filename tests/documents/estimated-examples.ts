import { estimate } from "#lib/estimate/estimate.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { ScopeOption } from "#lib/job/result/plan-result.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { createHighsSolver } from "#lib/work/highs-solver.ts";
import { exampleWithReference } from "#tests/estimate/example-jobs.ts";

const DRAWS = 200;
const kept = new Map<string, Promise<{ job: Job; result: Result }>>();

/** An example job with its result; each is worked out once for a test file. */
export function estimatedExample(file: string): Promise<{ job: Job; result: Result }> {
  const known = kept.get(file);
  if (known) return known;
  const working = (async () => {
    const { job, reference } = await exampleWithReference(file);
    const result = await estimate(job, reference, { solve: await createHighsSolver(), draws: DRAWS, seed: 1 });
    return { job, result };
  })();
  kept.set(file, working);
  return working;
}

/** The same house with sixty leaks and four options: made for layout alone, its numbers mean nothing. */
export async function largeExample(): Promise<{ job: Job; result: Result }> {
  const { job, result } = await estimatedExample("hot-humid-two-systems.json");
  const numbers = Array.from({ length: 60 }, (_, index) => index);
  const site = (index: number) => job.sites[index % job.sites.length]!;
  const found = (index: number) => result.sites.find(({ id }) => id === site(index).id)!;
  const [first] = result.scope.options;
  const measureOf = (index: number) => ({
    ...first!.measures[index % first!.measures.length]!,
    siteId: `leak-${index}`,
  });
  const option = (id: string, fixed: number): ScopeOption => ({
    ...first!,
    id,
    measures: numbers.slice(0, fixed).map(measureOf),
    leavesUndone: numbers.slice(fixed).map((index) => ({ siteId: `leak-${index}`, why: "made for the test" })),
  });
  return {
    job: {
      ...job,
      sites: numbers.map((index) => ({
        ...site(index),
        id: `leak-${index}`,
        label: `A leak with a long name, so that its row needs two lines, number ${index + 1}`,
      })),
    },
    result: {
      ...result,
      sites: numbers.map((index) => ({ ...found(index), id: `leak-${index}` })),
      scope: {
        ...result.scope,
        options: [option("essential", 15), option("target", 30), option("everything", 45), option("closest", 60)],
        chosen: "closest",
      },
    },
  };
}
