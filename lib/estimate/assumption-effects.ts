import { InputProblem } from "#lib/errors/input-problem.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import type { Assumption } from "#lib/job/result/evidence-result.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { withValueAt } from "#lib/job/with-value-at.ts";
import type { Quantity } from "#lib/units/quantity.ts";
import { estimate } from "./estimate.ts";
import type { ReferenceData } from "./reference-data.ts";

type DollarsPerYear = Quantity<"USD/yr">;

/** What an assumed value does to the answer: the yearly dollars with it at its one end and at its other. */
export interface AssumptionEffect {
  path: string;
  lowUsdPerYear: DollarsPerYear;
  highUsdPerYear: DollarsPerYear;
}

/**
 * What each assumed value does to the yearly dollars when it alone is told, once as its low and once as its high end.
 * effect = estimate(job with the value) at both ends, the chosen work held fixed; without chosen work the dollars are
 * what all leaks cost. Valid for assumptions that state both ends. Source: jcgm-101 annex B (one at a time).
 * Left out: assumptions without ends, and those whose end the job's schema refuses.
 */
export async function assumptionEffects({
  job,
  reference,
  result,
  between,
}: {
  job: Job;
  reference: ReferenceData;
  result: Result;
  /** Waited for between two assumptions; what it throws ends the work. */
  between?: () => Promise<void>;
}): Promise<AssumptionEffect[]> {
  const fixed = holdWork(job, result);
  const shown = dollarsOf(result);
  const dollarsWith = async (path: string, value: unknown): Promise<number | undefined> => {
    const told = parsed(withValueAt(fixed, path, value));
    if (!told) return undefined;
    return dollarsOf(await estimate(told, reference));
  };
  const effects: AssumptionEffect[] = [];
  for (const assumption of result.assumptions) {
    const ends = endsOf(assumption);
    if (!ends) continue;
    await between?.();
    const one = await dollarsWith(assumption.path, ends[0]);
    const other = await dollarsWith(assumption.path, ends[1]);
    if (one === undefined || other === undefined) continue;
    effects.push({
      path: assumption.path,
      // A value in between can do more than both ends, so what is shown now counts as well.
      lowUsdPerYear: Math.min(one, other, shown),
      highUsdPerYear: Math.max(one, other, shown),
    });
  }
  return effects;
}

const dollarsOf = ({ scope, savings, economics }: Result): DollarsPerYear =>
  (scope.chosen === null ? economics.doingNothingUsdPerYear : savings.costUsdPerYear).value;

/** DollarsPerYear a year by which open answers widen the range together: their spans, added in squares. */
export function spreadOf(effects: readonly AssumptionEffect[]): DollarsPerYear {
  return Math.hypot(...effects.map(({ lowUsdPerYear, highUsdPerYear }) => highUsdPerYear - lowUsdPerYear));
}

/** The job with the chosen work written down, so that a what-if does not choose anew. */
function holdWork(job: Job, { scope }: Result): Job {
  const chosen = scope.options.find(({ id }) => id === scope.chosen);
  if (!chosen) return job;
  const chosenMeasures = chosen.measures.map(({ siteId, repairId }) => ({ siteId, repairId }));
  return { ...job, plan: { ...job.plan, chosenMeasures } };
}

/** Both ends in the form in which the job would hold them; the size of a leak is an object there. */
function endsOf({ path, value, low, high }: Assumption): readonly [unknown, unknown] | undefined {
  if (typeof value !== "number" || low === undefined || high === undefined) return undefined;
  if (!/^#\/sites\/\d+\/size$/.test(path)) return [low, high];
  return [
    { from: "estimate", estimateCfm25: low },
    { from: "estimate", estimateCfm25: high },
  ];
}

function parsed(document: unknown): Job | undefined {
  try {
    return parseJob(document);
  } catch (thrown) {
    if (thrown instanceof InputProblem) return undefined;
    throw thrown;
  }
}
