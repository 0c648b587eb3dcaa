import { beforeAll, describe, expect, it } from "vitest";
import {
  type Coverage,
  coverageBy,
  coverageOf,
  coverageStudy,
  JUDGED,
  KINDS,
  type StudyRow,
} from "./coverage/coverage-study.ts";

/**
 * Are the 80 % ranges honest? 1,000 simulated houses whose truth comes from another model than the estimate's own: a flow
 * network for the readings, rooms and zones with heat of their own through a year of hours. The doubt of the calculation
 * itself was tuned on the houses of seed 11; these, of seed 7919, were never used for that.
 */
const REPORTED = { seed: 7919, houses: 1000 } as const;
const LEAST = 0.75;
const MOST = 0.85;
/** Of one kind of house: fewer of them, and some are harder. */
const LEAST_OF_A_KIND = 0.7;
const HOUSES_THAT_TELL = 100;

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
const said = ({ name, houses, coveredShare, belowShare, aboveShare, meanWidth, meanTruth, meanEstimate }: Coverage) =>
  `${name}: ${houses} houses, covered ${percent(coveredShare)}, truth below ${percent(belowShare)}, above ${percent(aboveShare)}; mean width ${meanWidth.toFixed(0)}, mean truth ${meanTruth.toFixed(0)}, mean median ${meanEstimate.toFixed(0)}`;

describe(`the 80 % ranges of ${REPORTED.houses} simulated houses`, () => {
  let rows: StudyRow[] = [];
  beforeAll(async () => {
    rows = await coverageStudy(REPORTED);
    for (const judged of JUDGED) console.log(said(coverageOf(judged, rows, judged)));
    for (const kind of KINDS) for (const each of coverageBy(rows, kind)) console.log(said(each));
  }, 60 * 60_000);

  it.each(JUDGED)("hold the truth between 75 and 85 times of 100: %s", (judged) => {
    const { coveredShare } = coverageOf(judged, rows, judged);
    expect(rows.length).toBe(REPORTED.houses);
    expect(coveredShare).toBeGreaterThanOrEqual(LEAST);
    expect(coveredShare).toBeLessThanOrEqual(MOST);
  });

  it.each(KINDS)("hold the true saving at least 70 times of 100 in every kind of house, by %s", (kind) => {
    const kinds = coverageBy(rows, kind).filter(({ houses }) => houses >= HOUSES_THAT_TELL);
    expect(kinds.length).toBeGreaterThan(2);
    for (const { name, coveredShare } of kinds) expect(coveredShare, name).toBeGreaterThanOrEqual(LEAST_OF_A_KIND);
  });

  it("miss upward about as often as downward: within ten houses of 100", () => {
    const { belowShare, aboveShare } = coverageOf("savings", rows);
    expect(Math.abs(belowShare - aboveShare)).toBeLessThan(0.1);
  });

  it("would fail if they were half as wide, or twice", () => {
    expect(coverageOf("half", rows, "savings", 0.5).coveredShare).toBeLessThan(LEAST);
    expect(coverageOf("double", rows, "savings", 2).coveredShare).toBeGreaterThan(MOST);
  });

  it("do not lean: the mean of their medians is within a tenth of the mean truth", () => {
    const { meanEstimate, meanTruth } = coverageOf("savings", rows);
    expect(Math.abs(meanEstimate / meanTruth - 1)).toBeLessThan(0.1);
  });

  it("come from houses whose own account of heat closes", () => {
    // The run time of each half hour is searched for; in the worst of millions the search stops at a few parts in a thousand.
    expect(Math.max(...rows.map(({ largestMiss }) => largestMiss))).toBeLessThan(0.005);
  });
});
