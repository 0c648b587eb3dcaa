import { describe, expect, it } from "vitest";
import { judgeConvergence } from "#lib/estimate/judge-convergence.ts";
import { createDrawSource } from "#lib/numeric/create-draw-source.ts";

function normals(count: number): Float64Array {
  const out = new Float64Array(count);
  createDrawSource(3).fillNormals(0, out);
  return out;
}

describe("convergence of the draws [jcgm-101 §7.9]", () => {
  it("gives about the standard error of a quantile, √(p(1 − p)/n)/φ(z), in normal draws", () => {
    const found = judgeConvergence(normals(100_000))!;
    // φ(1.28155) = 0.175498, φ(0) = 0.398942. Ten batches tell a standard error to about a quarter.
    const tails = Math.sqrt(0.09 / 100_000) / 0.175498;
    const middle = Math.sqrt(0.25 / 100_000) / 0.398942;
    expect(found.p10StandardErrorUsdPerYear / tails).toBeGreaterThan(0.5);
    expect(found.p10StandardErrorUsdPerYear / tails).toBeLessThan(1.6);
    expect(found.p50StandardErrorUsdPerYear / middle).toBeGreaterThan(0.5);
    expect(found.p50StandardErrorUsdPerYear / middle).toBeLessThan(1.6);
    expect(found.p90StandardErrorUsdPerYear / tails).toBeLessThan(1.6);
  });

  it("falls with the root of the draws", () => {
    const few = judgeConvergence(normals(1000))!.p90StandardErrorUsdPerYear;
    const many = judgeConvergence(normals(100_000))!.p90StandardErrorUsdPerYear;
    expect(few / many).toBeGreaterThan(4);
    expect(few / many).toBeLessThan(25);
  });

  it("says nothing without draws, or with fewer than a hundred", () => {
    expect(judgeConvergence(undefined)).toBeNull();
    expect(judgeConvergence(normals(99))).toBeNull();
  });
});
