import type { DuctTest } from "#lib/job/duct-test.ts";
import type { Claim } from "../claim-schema.ts";
import { type ClaimFlag, type FlagEvidence, flag } from "./claim-flag.ts";
import { type Moment, minutesBetween, momentOf } from "./moment.ts";

/** Between the first test and the retest of sealed ducts lies at least this. Source: practice. */
const LEAST_WORK_MINUTES = 20;

interface TimedTest {
  test: DuctTest;
  index: number;
  at: Moment | undefined;
}

const isAfterWork = ({ stage }: DuctTest) => stage === "retest" || stage === "final";

function orderEvidence(tests: readonly TimedTest[]): FlagEvidence[] {
  return tests.flatMap((after) =>
    tests.flatMap((before) => {
      if (!isAfterWork(after.test) || before.test.stage !== "existing" || !after.at || !before.at) return [];
      if (after.test.systemId !== before.test.systemId) return [];
      const path = `#/job/tests/${after.index}`;
      const minutes = minutesBetween(before.at, after.at);
      if (minutes === undefined)
        return after.at.date < before.at.date
          ? [{ path, says: `${after.test.id} (${after.at.date}) comes before ${before.test.id} (${before.at.date})` }]
          : [];
      if (minutes < 0) return [{ path, says: `${after.test.id} comes ${-minutes} minutes before ${before.test.id}` }];
      if (minutes < LEAST_WORK_MINUTES)
        return [{ path, says: `Only ${minutes} minutes lie between ${before.test.id} and ${after.test.id}` }];
      return [];
    }),
  );
}

/** Two tests with one instrument at the same minute. */
function sameMinuteEvidence(tests: readonly TimedTest[]): FlagEvidence[] {
  return tests.flatMap((later, place) =>
    tests.slice(0, place).flatMap((earlier) => {
      const shares = later.test.fanId !== undefined && later.test.fanId === earlier.test.fanId;
      if (!shares || !later.at || !earlier.at || minutesBetween(earlier.at, later.at) !== 0) return [];
      return [
        {
          path: `#/job/tests/${later.index}`,
          says: `${earlier.test.id} and ${later.test.id} stand at the same minute`,
        },
      ];
    }),
  );
}

/** Times that do not fit: a retest before the first test, no time for the work, a claim before its tests or photos. */
export function timeFlags({ job, claimedOn }: Pick<Claim, "job" | "claimedOn">): ClaimFlag[] {
  const tests = job.tests.map((test, index) => ({ test, index, at: momentOf(test) }));
  const late = tests
    .filter(({ at }) => at && at.date > claimedOn)
    .map(({ test, index, at }) => ({
      path: `#/job/tests/${index}/date`,
      says: `${test.id} is of ${at?.date}, after the claim (${claimedOn})`,
    }));
  const latePhotos = job.sites.flatMap(({ id, photos }, index) =>
    (photos ?? []).flatMap(({ takenOn }, at) =>
      takenOn && takenOn > claimedOn
        ? [{ path: `#/job/sites/${index}/photos/${at}`, says: `A photo of ${id} is of ${takenOn}, after the claim` }]
        : [],
    ),
  );
  return flag("times-impossible", [...orderEvidence(tests), ...sameMinuteEvidence(tests), ...late, ...latePhotos]);
}
