import { describe, expect, it } from "vitest";
import { changesSince, ENGINE_HISTORY } from "#lib/estimate/engine-history.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";

describe("the history of the engine", () => {
  it("ends with the version that runs, so that no change of a number goes untold", () => {
    expect(ENGINE_HISTORY.at(-1)?.version).toBe(ENGINE_VERSION);
  });

  it("names each version once, in order", () => {
    const numbers = ENGINE_HISTORY.map(({ version }) => version.split(".").map(Number));
    for (let k = 1; k < numbers.length; k++) {
      const [major, minor, patch] = numbers[k - 1]!;
      expect([
        [major, minor, patch! + 1],
        [major, minor! + 1, 0],
        [major! + 1, 0, 0],
      ]).toContainEqual(numbers[k]);
    }
  });

  it("tells what came after a version, nothing after the newest, and owns up to one it does not know", () => {
    expect(changesSince("1.3.0")?.map(({ version }) => version)).toContain("1.4.0");
    expect(changesSince(ENGINE_VERSION)).toEqual([]);
    expect(changesSince("9.9.9")).toBeNull();
  });
});
