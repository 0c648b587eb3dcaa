import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import { contentHash } from "#lib/hash/content-hash.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { RESULT_SCHEMA_VERSION } from "#lib/job/result/result-schema-version.ts";
import type { MixedIntegerSolver } from "#lib/scope/solver.ts";
import { assembleResult } from "./assemble/assemble-result.ts";
import { chooseScope } from "./choose-scope.ts";
import { completeHouse } from "./complete/complete-house.ts";
import type { DrawElsewhere } from "./draw-share.ts";
import { elevationOf } from "./elevation-of.ts";
import { ENGINE_VERSION } from "./engine-version.ts";
import { findDrivers } from "./find-drivers.ts";
import { findTarget } from "./find-target.ts";
import { createHouseKernel } from "./kernel/house-kernel.ts";
import { createLedger } from "./ledger.ts";
import { readTests } from "./read-tests.ts";
import { evaluateHouse } from "./run-draws.ts";
import { valueLeaks } from "./value-leaks.ts";
import { createWorkPlans } from "./work-plan.ts";

export interface EstimateOptions {
  /** Finds the cheapest scope. Without it the measures stated in the job are taken as chosen. */
  solve?: MixedIntegerSolver;
  /** Draws for the ranges; 0 gives the values alone. */
  draws?: number;
  seed?: number;
  /** Evaluates the draws in other threads; the numbers are the same. Without it they are evaluated here. */
  drawElsewhere?: DrawElsewhere;
}

/**
 * The whole trip of the data, from a duct test's readings to a sealing scope and its savings.
 *
 * job → measure → apportion, climate, loads, distribution (one kernel, evaluated as a whole) → scope → airflow,
 * distribution and savings after → uncertainty around it all → retest plan → result. Pure: no clock, no chance but the
 * seed, no input but its arguments; the same job, reference data, seed and version give the same bytes.
 * @throws InputProblem when a value of the job is outside what a method can answer.
 */
export async function estimate(
  job: Job,
  reference: ReferenceData,
  { solve, draws = 0, seed = 1, drawElsewhere }: EstimateOptions = {},
): Promise<Result> {
  const ledger = createLedger();

  // 1. Readings become leakage at 25 Pa, each with its doubt.
  const elevationFt = elevationOf(job, reference);
  const measurements = readTests({ job, elevationFt, ledger });

  // 2. Every gap of the job is filled aloud: the house as the kernel evaluates it.
  const house = completeHouse({ job, reference, measurements, ledger });

  // 3. Each leak is valued by closing it alone; together they are the price of doing nothing.
  const worth = valueLeaks(house);

  // 4. What the work has to reach, and the options that reach it.
  const target = findTarget({ house, worth, ledger });
  const scopes = await chooseScope({ house, worth, target, solve, ledger });

  // 5. The house before and after each option, at the best estimates and for every draw. The chosen option comes first.
  const chosenFirst = [...scopes.options].sort(
    (one, other) => Number(other.id === scopes.chosenId) - Number(one.id === scopes.chosenId),
  );
  const { details, problem } = scopes.jobProblem;
  const plans = createWorkPlans({ house, options: chosenFirst, details, sprays: problem.systemRepairs });
  const evaluate = async (isVerified: boolean) => {
    const kernel = createHouseKernel(house, plans, { isVerified });
    const options = chosenFirst.map(({ id, measures }) => ({ id, measures }));
    const asked = { job, reference, options, isVerified, draws, seed };
    const rows = draws > 0 ? await drawElsewhere?.(asked) : undefined;
    return {
      kernel,
      evaluated: { layout: kernel.layout, outcome: evaluateHouse({ kernel, space: house.space, draws, seed, rows }) },
    };
  };
  const prediction = await evaluate(false);

  // 6. Once a retest is in, the leakage after comes from it, and the prediction is kept beside it as the promise.
  const isVerified = house.groups.some((group) => group.after.length > 0);
  const { kernel, evaluated } = isVerified ? await evaluate(true) : prediction;

  // 7. What makes the range wide, and what would narrow it most.
  const drivers = draws > 0 ? findDrivers({ kernel, space: house.space }) : [];
  kernel.evaluate(house.space.base(), new Float64Array(kernel.layout.keys.length));

  // 8. Everything under the names that other programs rely on.
  return assembleResult({
    identity: {
      schemaVersion: RESULT_SCHEMA_VERSION,
      engineVersion: ENGINE_VERSION,
      jobHash: contentHash(job),
      referenceDataHash: reference.hash,
      draws,
      seed,
    },
    house,
    reference,
    measurements,
    worth,
    target,
    scopes: { ...scopes, options: chosenFirst },
    kernel,
    evaluated,
    predicted: prediction.evaluated,
    isVerified,
    drivers,
    ledger,
  });
}
