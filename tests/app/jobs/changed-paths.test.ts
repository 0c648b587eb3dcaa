import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { changedPaths } from "#app/jobs/trip/changed-paths.ts";
import { type Draft, readAt, writeAt } from "#app/jobs/trip/draft.ts";

describe("where two states of a job differ", () => {
  const before: Draft = { title: "a", house: { zip: "53711" }, tests: [{ id: "t", points: [{ flowCfm: 290 }] }] };
  test("names the changed, the new and the missing value, and nothing else", () => {
    const after = writeAt(writeAt(writeAt(before, "house/zip", undefined), "house/builtYear", 1978), "title", "a");
    expect(changedPaths(before, after).sort()).toEqual(["house/builtYear", "house/zip"]);
    expect(changedPaths(before, writeAt(before, "tests/0/points/0/flowCfm", 291))).toEqual([
      "tests/0/points/0/flowCfm",
    ]);
  });
  test("of any two states, what is not named is equal, and a state does not differ from itself", () => {
    const drafts = fc.dictionary(fc.constantFrom("house", "plan", "rates"), fc.jsonValue({ maxDepth: 2 }));
    fc.assert(
      fc.property(drafts, drafts, (one, other) => {
        const [a, b] = [one, other] as unknown as [Draft, Draft];
        expect(changedPaths(a, a)).toEqual([]);
        const tops = new Set(changedPaths(a, b).map((path) => path.split("/")[0]));
        for (const key of ["house", "plan", "rates"]) {
          if (!tops.has(key)) expect(readAt(a, key)).toEqual(readAt(b, key));
        }
      }),
    );
  });
});
