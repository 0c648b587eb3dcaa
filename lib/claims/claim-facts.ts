import { contentHash } from "#lib/hash/content-hash.ts";
import type { DuctTest } from "#lib/job/duct-test.ts";
import type { Gauge, TestFan } from "#lib/job/instrument-schema.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { premiseKey } from "#lib/job/premise-key.ts";
import type { ClaimBody } from "./claim-schema.ts";

/** Where and when one instrument was used. */
export interface InstrumentUse {
  /** Serial number where it is known; else its name, which is unique only within its owner. */
  instrument: string;
  hasSerialNumber: boolean;
  testId: string;
  date?: string;
  time?: string;
}

/** What of a claim is compared with other claims, and what lists show. */
export interface ClaimFacts {
  premiseKey: string;
  readingsHash: string;
  photoHashes: string[];
  instrumentUses: InstrumentUse[];
  /** Day of the last test after the work, YYYY-MM-DD. */
  completedOn: string;
}

const isAfterWork = ({ stage }: DuctTest) => stage === "retest" || stage === "final";

/** Readings as taken, without ids, names and dates: equal readings give an equal text whoever entered them. */
function readingsOf(test: DuctTest): unknown {
  switch (test.kind) {
    case "total-leakage":
    case "leakage-to-outside":
      return [test.kind, isAfterWork(test), test.baselineBeforePa ?? 0, test.baselineAfterPa ?? 0, test.points];
    case "blower-door-subtraction":
      return [test.kind, isAfterWork(test), test.wholeHouseCfm50, test.envelopeCfm50, test.ductToHousePressurePa];
    case "delta-q":
      return [test.kind, isAfterWork(test), test.points];
  }
}

function usesOf(job: Job): InstrumentUse[] {
  const known = new Map<string, TestFan | Gauge>(
    [...(job.instruments?.fans ?? []), ...(job.instruments?.gauges ?? [])].map((each) => [each.id, each]),
  );
  return job.tests.flatMap(({ id: testId, fanId, gaugeId, date, time }) =>
    [fanId, gaugeId].flatMap((id) => {
      const instrument = known.get(id ?? "");
      if (!instrument) return [];
      const { serialNumber, name } = instrument;
      return [{ instrument: serialNumber ?? name, hasSerialNumber: serialNumber !== undefined, testId, date, time }];
    }),
  );
}

/** The facts of a claim, read from its job. */
export function claimFacts({ job, claimedOn }: Pick<ClaimBody, "job" | "claimedOn">): ClaimFacts {
  const dates = job.tests.filter(isAfterWork).flatMap(({ date }) => date ?? []);
  return {
    premiseKey: premiseKey({ addressLine: job.house.label, zip: job.house.zip ?? "" }),
    readingsHash: contentHash(job.tests.map(readingsOf)),
    photoHashes: [...new Set(job.sites.flatMap(({ photos }) => (photos ?? []).map(({ sha256 }) => sha256)))].sort(),
    instrumentUses: usesOf(job),
    completedOn: dates.sort().at(-1) ?? claimedOn,
  };
}
