import { describe, expect, test } from "vitest";
import { buildAnswer } from "#app/jobs/trip/answer.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import { exampleJob } from "#tests/estimate/example-jobs.ts";

async function answerOf(job: Job, units: UnitSystem = "us") {
  return buildAnswer({ job, result: await estimate(job, await loadReferenceData(job)), units });
}

describe("the answer beside the form", () => {
  const job = exampleJob("cold-attic-furnace.json");
  test("says no number before there is a reading or a leak, for a number about nothing looks like a good result", async () => {
    const answer = await answerOf({ ...job, tests: [], sites: [], plan: undefined });
    expect([answer.stats, answer.bar, answer.dollars]).toEqual([[], [], undefined]);
    expect(answer.house.wide.shapes.length).toBeGreaterThan(0);
  });
  test("speaks from the first leak on", async () => {
    const answer = await answerOf({ ...job, tests: [], plan: undefined });
    expect(answer.stats.map(({ id }) => id)).toEqual(["total", "outside", "rooms", "saved"]);
    expect(answer.bar).toHaveLength(3);
  });
});
