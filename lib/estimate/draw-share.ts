import type { Job } from "#lib/job/job-schema.ts";
import { completeHouse } from "./complete/complete-house.ts";
import { elevationOf } from "./elevation-of.ts";
import { createHouseKernel } from "./kernel/house-kernel.ts";
import { createLedger } from "./ledger.ts";
import { type OptionMeasures, plansOfMeasures } from "./plans-of-measures.ts";
import { readTests } from "./read-tests.ts";
import type { ReferenceData } from "./reference-data.ts";
import { runDraws } from "./run-draws.ts";

/** All draws of one kernel, as the trip asks for them: plain data that can be sent to another thread. */
export interface AskedDraws {
  job: Job;
  reference: ReferenceData;
  /** In the order of the kernel's plans. */
  options: readonly OptionMeasures[];
  isVerified: boolean;
  draws: number;
  seed: number;
}

/** Draws `from` up to, not including, `to`. */
export interface DrawShare {
  from: number;
  to: number;
}

/** Has the draws evaluated somewhere else, one row of draws for each output; a row is the same wherever it was made. */
export type DrawElsewhere = (asked: AskedDraws) => Promise<Float64Array[]>;

/**
 * Makes the house anew from the job and answers with any share of its draws. Draw k depends on job, options, seed and k
 * alone, so shares put one after the other are the very numbers that one thread would have drawn.
 */
export function prepareShares({
  job,
  reference,
  options,
  isVerified,
  seed,
}: AskedDraws): (from: number, to: number) => Float64Array[] {
  const ledger = createLedger();
  const measurements = readTests({ job, elevationFt: elevationOf(job, reference), ledger });
  const house = completeHouse({ job, reference, measurements, ledger });
  const kernel = createHouseKernel(
    house,
    plansOfMeasures(house, () => options),
    { isVerified },
  );
  return (from, to) => runDraws({ kernel, space: house.space, seed, from, to });
}

/** All draws in shares of at most `most`, one after the other: tells how many are made after each, and gives the rows. */
export function* drawByShares(asked: AskedDraws, most: number): Generator<number, Float64Array[]> {
  const evaluate = prepareShares(asked);
  const rows: Float64Array[] = [];
  for (let from = 0; from < asked.draws; from += most) {
    const to = Math.min(from + most, asked.draws);
    for (const [output, row] of evaluate(from, to).entries()) {
      rows[output] ??= new Float64Array(asked.draws);
      rows[output].set(row, from);
    }
    yield to;
  }
  return rows;
}
