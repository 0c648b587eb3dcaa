import { expect, test } from "vitest";
import { assumptionEffects } from "#lib/estimate/assumption-effects.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { exampleWithReference } from "./example-jobs.ts";

const { job, reference } = await exampleWithReference("cold-attic-furnace.json");
const without = (change: (system: Job["systems"][number]) => void): Job => {
  const copy = structuredClone(job);
  change(copy.systems[0]!);
  return parseJob(copy);
};
const assumedAt = (list: { path: string }[], path: string) => list.find((each) => each.path === `#/systems/0/${path}`);

test("a nameplate that nobody read is a listed size, and the range says so", async () => {
  const unread = without((system) => {
    delete system.heating!.outputBtuPerH;
    delete system.cooling!.capacityBtuPerH;
  });
  const [told, guessed] = await Promise.all([job, unread].map((each) => estimate(each, reference, { draws: 500 })));
  // 1,640 ft²: 35 Btu/h per ft² to the nearest 10,000, a ton per 550 ft² to the nearest half (practice, from memory).
  expect(assumedAt(guessed!.assumptions, "heating/outputBtuPerH")).toMatchObject({ value: 60_000, unit: "Btu/h" });
  expect(assumedAt(guessed!.assumptions, "cooling/capacityBtuPerH")).toMatchObject({ value: 36_000 });
  expect(assumedAt(told!.assumptions, "heating/outputBtuPerH")).toBeUndefined();
  const effects = await assumptionEffects({ job: unread, reference, result: guessed! });
  const effect = effects.find(({ path }) => path === "#/systems/0/heating/outputBtuPerH");
  expect(effect!.highUsdPerYear).not.toBe(effect!.lowUsdPerYear);
});

test("a size that happens to be the usual one gives the same answer, read or not", async () => {
  const read = without((system) => {
    system.heating!.outputBtuPerH = 60_000;
    system.cooling!.capacityBtuPerH = 36_000;
  });
  const unread = without((system) => {
    delete system.heating!.outputBtuPerH;
    delete system.cooling!.capacityBtuPerH;
  });
  const [one, other] = await Promise.all([read, unread].map((each) => estimate(each, reference)));
  expect(other!.savings).toEqual(one!.savings);
});

test("a heat pump's one capacity stands for its other, within narrower ends than the floor area gives", async () => {
  const sizesOf = async (heating: number | undefined, cooling: number | undefined) => {
    const pump = without((system) => {
      system.heating = { kind: "heat-pump", ...(heating && { outputBtuPerH: heating }) };
      system.cooling = { kind: "heat-pump", ...(cooling && { capacityBtuPerH: cooling }) };
    });
    const { assumptions } = await estimate(pump, reference);
    return ["heating/outputBtuPerH", "cooling/capacityBtuPerH"].map((path) => assumedAt(assumptions, path));
  };
  expect(await sizesOf(30_000, undefined)).toMatchObject([undefined, { value: 30_000, high: 34_500 }]);
  expect(await sizesOf(undefined, 42_000)).toMatchObject([{ value: 42_000 }, undefined]);
  expect(await sizesOf(undefined, undefined)).toMatchObject([{ value: 36_000, high: 49_500 }, { value: 36_000 }]);
});
