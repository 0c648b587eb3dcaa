import { describe, expect, test } from "vitest";
import { catalogueOfJob } from "#lib/scope/job-repairs.ts";
import type { SealingRetest } from "#lib/scope/learning.ts";
import { learnedEffects, repairsInForce, untouchedRepairs, withNewRepairs } from "#lib/scope/own-repairs.ts";
import { STARTING_CATALOGUE } from "#lib/scope/repairs.ts";
import { noteDecision } from "#lib/scope/revise-repairs.ts";
import { expectClose } from "#tests/expect-close.ts";

/** 30 joints of 100 cfm in all, tested almost exactly, of which 30% were left where the catalogue says 10%. */
const thirtyJoints: SealingRetest = {
  treated: [{ repairId: "mastic-with-mesh", cfm25: 100, sitesCount: 30 }],
  removedCfm25: 70,
  standardUncertaintyCfm25: 1e-6,
};
const untouched = untouchedRepairs("ours");
const masticOf = (repairs: Parameters<typeof catalogueOfJob>[0]["repairs"]) =>
  catalogueOfJob({ repairs }).repairs.find(({ id }) => id === "mastic-with-mesh")!;

describe("an organization's repairs as a new job takes them", () => {
  test("without retests they are the figures alone, and no count is claimed", () => {
    for (const usesRetests of [true, false]) {
      expect(repairsInForce({ catalogue: untouched, usesRetests, retests: [] })).toEqual({
        catalogueId: "ours",
        versionId: "0",
        figures: [],
      });
    }
  });

  test("retests move the effect as a conjugate normal mean does, and the job says how many there were", () => {
    const inForce = repairsInForce({ catalogue: untouched, usesRetests: true, retests: [thirtyJoints] });
    expect(inForce.retestsCount).toBe(1);
    expect(inForce.figures.map(({ repairId }) => repairId)).toEqual(["mastic-with-mesh"]);
    // (10 × 0.10 + 30 × 0.30) / 40; spread √(0.08² + 0.08²/40), stated to a ten-thousandth.
    const { remainingShare, remainingSpreadShare } = masticOf(inForce);
    expect(remainingShare).toBe(0.25);
    expectClose({
      actual: remainingSpreadShare,
      expected: 0.08 * Math.sqrt(1 + 1 / 40),
      relativeTolerance: 1e-3,
      reason: "stated to a ten-thousandth",
    });
  });

  test("an organization that does not want them keeps its own figures", () => {
    const inForce = repairsInForce({ catalogue: untouched, usesRetests: false, retests: [thirtyJoints] });
    expect(masticOf(inForce).remainingShare).toBe(0.1);
    expect(inForce.retestsCount).toBeUndefined();
  });

  test("a retest with a repair that is gone teaches nothing and stops nothing", () => {
    const gone = { ...thirtyJoints, treated: [...thirtyJoints.treated, { repairId: "gone", cfm25: 5, sitesCount: 1 }] };
    expect(learnedEffects(untouched, [gone]).every(({ retestsCount }) => retestsCount === 0)).toBe(true);
    expect(learnedEffects(untouched, [gone, thirtyJoints]).some(({ retestsCount }) => retestsCount === 1)).toBe(true);
  });

  test("repairs that the product gained since stand after the organization's own", () => {
    const older = { ...untouched, repairs: untouched.repairs.slice(3) };
    const { repairs } = withNewRepairs(older);
    expect(repairs.slice(0, older.repairs.length)).toEqual(older.repairs);
    expect(new Set(repairs.map(({ id }) => id))).toEqual(new Set(STARTING_CATALOGUE.repairs.map(({ id }) => id)));
  });

  test("a decision is a version of its own: who, when and why, and no figure changed", () => {
    const note = { versionId: "1", date: "2026-11-28", by: "Robin Example", reason: "Our own retests count" };
    const next = noteDecision({ catalogue: untouched, ...note });
    expect(next.repairs).toEqual(untouched.repairs);
    expect(next.versionId).toBe("1");
    expect(next.history.at(-1)).toEqual({ ...note, basedOnVersionId: "0", changes: [] });
  });
});
