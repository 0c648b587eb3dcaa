import { type Claim, claimSchema } from "#lib/claims/claim-schema.ts";
import { claimedNumbers } from "#lib/claims/claimed-numbers.ts";
import { claimBody, createClaim } from "#lib/claims/create-claim.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { estimateClaimedFigures } from "#lib/estimate/estimate-claimed-figures.ts";
import { contentHash } from "#lib/hash/content-hash.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { exampleWithReference } from "#tests/estimate/example-jobs.ts";

const EXAMPLE = "mixed-crawlspace-retest.json";
const DAYS_IN_MONTH = 28;
const HOUSES_PER_INSTRUMENT_AND_DAY = 3;

/** The example's house as the i-th of many: an address, readings, instruments and days of its own. */
function houseNumber(job: Job, i: number): Job {
  const day = String(1 + (Math.floor(i / HOUSES_PER_INSTRUMENT_AND_DAY) % DAYS_IN_MONTH)).padStart(2, "0");
  const crew = Math.floor(i / HOUSES_PER_INSTRUMENT_AND_DAY / DAYS_IN_MONTH);
  const withSerial = <T extends object>(list: readonly T[] | undefined) =>
    list?.map((each, k) => ({ ...each, serialNumber: `INV-${crew}-${k}` }));
  return {
    ...job,
    id: `generated-${i}`,
    house: { ...job.house, label: `${i + 1} Generated Street (invented)` },
    instruments: { fans: withSerial(job.instruments?.fans), gauges: withSerial(job.instruments?.gauges) },
    tests: job.tests.map((test, t) => ({
      ...test,
      ...(test.date && { date: `2026-10-${day}` }),
      ...(test.time && {
        time: `${String(8 + (i % HOUSES_PER_INSTRUMENT_AND_DAY) * 3).padStart(2, "0")}:${10 + t * 5}`,
      }),
      ...("points" in test && test.kind !== "delta-q"
        ? {
            points: test.points.map((point) => ({
              ...point,
              ...(point.fanPressurePa !== undefined && { fanPressurePa: point.fanPressurePa * (1 + i * 1e-6) }),
            })),
          }
        : {}),
    })),
  } as Job;
}

/** A packet hashed anew after a change of its body. */
export function sealed(body: Omit<Claim, "hash" | "signature">): Claim {
  return { ...body, hash: contentHash(body) };
}

/** Makes claims of houses that never were, each with figures of its own: those that the engine gives for it. */
export async function claimGenerator(draws = 0): Promise<(i: number) => Claim> {
  const { job, reference } = await exampleWithReference(EXAMPLE);
  const first = createClaim({
    job,
    reference,
    result: await estimate(job, reference, { draws }),
    claimedBy: "Generated (invented)",
    claimedOn: "2026-11-20",
    measureLifeYears: 18,
    netToGrossRatio: 0.9,
  });
  const body = claimBody(claimSchema.parse(JSON.parse(JSON.stringify(first))));
  return (i) => {
    const house = houseNumber(body.job, i);
    const numbers = claimedNumbers(estimateClaimedFigures(house, reference, { draws, seed: body.seed }));
    return sealed({ ...body, job: house, jobHash: contentHash(house), numbers });
  };
}
