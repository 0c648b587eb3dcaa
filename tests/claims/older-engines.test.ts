import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { explainDifferences } from "#lib/claims/explain-differences.ts";
import { recomputeClaim } from "#lib/claims/recompute-claim.ts";
import { changesSince } from "#lib/estimate/engine-history.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";

/** Packets as the engines of their time issued them, of the example with a retest; kept, never made anew. */
const packetOf = (version: string): { numbers: Record<string, number[]> } =>
  JSON.parse(readFileSync(`tests/claims/packets/engine-${version}.json`, "utf8"));
const recompute = (packet: unknown) => recomputeClaim(packet, { loadReference: loadReferenceData, withDraws: true });

describe.each(["1.4.0", "1.5.0"])("a claim of engine %s", (version) => {
  it("still holds its seals, and the answer names each number that differs, by how much, and which version changed it", async () => {
    const packet = packetOf(version);
    const outcome = await recompute(packet);
    if (outcome.outcome !== "differs") throw new Error(`It is ${outcome.outcome}`);
    for (const { path, which, claimed, recomputed, relativeDifference } of outcome.differences) {
      expect(claimed).toBe(packet.numbers[path]![["value", "p10", "p90"].indexOf(which)]);
      expect(recomputed).not.toBe(claimed);
      expect(relativeDifference).toBeGreaterThan(1e-9);
    }
    const notes = outcome.notes.join("\n");
    expect(notes).toContain(`issued by engine ${version}, recomputed by engine ${ENGINE_VERSION}`);
    const later = changesSince(version)!.filter(({ touches }) => touches.includes("savings"));
    for (const change of later) expect(notes).toContain(change.what);
    const saved = outcome.differences.filter(({ path, which }) => path.startsWith("savings/") && which === "value");
    expect(notes).toContain(`savings: ${saved.length} differ`);
    expect(notes).toContain(`changed by engine ${later.map((each) => each.version).join(", ")}`);
    // The history owns up to every part that came out different.
    expect(notes).not.toContain("which no change of the engine");
  });

  it("is invalid all the same when one of its numbers was changed", async () => {
    const packet = packetOf(version);
    packet.numbers["savings/electricityKWh"]![0]! += 1;
    expect(await recompute(packet)).toMatchObject({ outcome: "invalid", errors: [{ pointer: "#/hash" }] });
  });
});

describe("differences told by part", () => {
  it("says where no change of the engine explains one", () => {
    const difference = { which: "value", claimed: 100, recomputed: 110, relativeDifference: 1 / 11 } as const;
    const [leakage, savings] = explainDifferences(
      [
        { ...difference, path: "sites/a/cfm25" },
        { ...difference, path: "leakage/totalCfm25", recomputed: 120, relativeDifference: 1 / 6 },
        { ...difference, path: "savings/electricityKWh" },
      ],
      [{ version: "1.7.0", date: "2026-11-28", what: "x", touches: ["savings"] }],
    );
    expect(leakage).toBe(
      "leakage: 2 differ, the most leakage/totalCfm25, 100 → 120 (17 %), which no change of the engine since then explains",
    );
    expect(savings).toBe(
      "savings: 1 differ, the most savings/electricityKWh, 100 → 110 (9.1 %), changed by engine 1.7.0",
    );
  });
});
