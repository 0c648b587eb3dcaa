import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { draftOfRepair, type RepairDraft, readRepairDraft } from "#app/repairs/repair-draft.ts";
import { changeWords } from "#app/repairs/repair-words.ts";
import type { Repair } from "#lib/scope/repair-schema.ts";
import { STARTING_CATALOGUE } from "#lib/scope/repairs.ts";

const mastic = STARTING_CATALOGUE.repairs.find(({ id }) => id === "mastic-with-mesh")!;
const draft: RepairDraft = { ...draftOfRepair(mastic), reason: "22 retests of ours" };

function repairOf(typed: RepairDraft, from: Repair = mastic): Repair {
  const read = readRepairDraft(from, typed);
  if ("problems" in read) throw new Error(JSON.stringify(read.problems));
  return read.repair;
}
const problemsOf = (typed: RepairDraft) => {
  const read = readRepairDraft(mastic, typed);
  return "problems" in read ? read.problems.map(({ fieldId }) => fieldId) : [];
};

describe("a repair as it is typed", () => {
  test("every repair of the catalogue goes into the form and comes back the same", () => {
    for (const repair of STARTING_CATALOGUE.repairs)
      expect(repairOf({ ...draftOfRepair(repair), reason: "as it was" }, repair)).toEqual(repair);
  });

  test("any share in hundredths of a percent comes back digit for digit", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000 }), (steps) => {
        const repair = { ...mastic, remainingShare: steps / 10_000 };
        expect(repairOf({ ...draftOfRepair(repair), reason: "any" }, repair).remainingShare).toBe(steps / 10_000);
      }),
    );
  });

  test("a figure that changed says where it is from; one that did not keeps its source", () => {
    const changed = repairOf({ ...draft, remainingPercent: "14.5" });
    expect(changed.remainingShare).toBe(0.145);
    expect(changed.evidence.effect).toEqual({ sourceId: "practice", reason: "Own figure: 22 retests of ours" });
    expect(changed.evidence.labour).toEqual(mastic.evidence.labour);
    expect(changed.evidence.materials).toEqual(mastic.evidence.materials);
  });

  test("what cannot be used is told at its field, all at once", () => {
    expect(
      problemsOf({
        ...draft,
        remainingPercent: "101",
        spreadPercent: "60",
        easyHours: "0",
        hardHours: "soon",
        materials: [{ ...draft.materials[0]!, amount: "" }],
        reason: " ",
      }),
    ).toEqual(["remaining", "spread", "easy", "hard", "material-0", "reason"]);
  });

  test("a repair that is not offered stays in the catalogue, and can be offered again", () => {
    const dropped = repairOf({ ...draft, isOffered: false });
    expect(dropped.isOffered).toBe(false);
    expect(repairOf({ ...draft, isOffered: true }, dropped).isOffered).toBe(true);
  });

  test("the history says values in words", () => {
    expect(changeWords("remainingShare", "0.145")).toBe("14.5%");
    expect(changeWords("isOffered", "")).toBe("yes");
    expect(changeWords("labourHours", JSON.stringify({ easy: 0.3, moderate: 0.5, hard: 0.9 }))).toBe("0.3 / 0.5 / 0.9");
  });
});
