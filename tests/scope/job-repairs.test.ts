import { describe, expect, test } from "vitest";
import { jobRepairsSchema } from "#lib/job/repair-figures.ts";
import { catalogueOfJob, repairsForJob } from "#lib/scope/job-repairs.ts";
import type { RepairCatalogue } from "#lib/scope/repair-schema.ts";
import { STARTING_CATALOGUE } from "#lib/scope/repairs.ts";

const own: RepairCatalogue = {
  ...STARTING_CATALOGUE,
  id: "our-repairs",
  versionId: "4",
  repairs: STARTING_CATALOGUE.repairs.map((repair) => {
    if (repair.id === "mastic-with-mesh")
      return { ...repair, remainingShare: 0.16, labourHours: { easy: 0.4, moderate: 0.6, hard: 1.1 } };
    if (repair.id === "spray-from-inside") return { ...repair, isOffered: false };
    return repair;
  }),
};

describe("an organization's repairs in a job", () => {
  test("only what differs is carried, and it is strict", () => {
    const carried = repairsForJob(own);
    expect(carried.figures).toEqual([
      { repairId: "mastic-with-mesh", remainingShare: 0.16, labourHours: { easy: 0.4, moderate: 0.6, hard: 1.1 } },
      { repairId: "spray-from-inside", isOffered: false },
    ]);
    expect(jobRepairsSchema.parse(carried)).toEqual(carried);
    expect(jobRepairsSchema.safeParse({ ...carried, surprise: 1 }).success).toBe(false);
    expect(repairsForJob(STARTING_CATALOGUE).figures).toEqual([]);
  });

  test("the job is planned with them: the same catalogue comes out, less what the crew does not offer", () => {
    const planned = catalogueOfJob({ repairs: repairsForJob(own) });
    expect(planned.repairs).toEqual(own.repairs.filter(({ id }) => id !== "spray-from-inside"));
    expect(planned).toMatchObject({ id: "our-repairs", versionId: "4" });
    expect(catalogueOfJob({})).toBe(STARTING_CATALOGUE);
  });

  test("the order in which a database gives a record's keys back is no difference", () => {
    const turned = STARTING_CATALOGUE.repairs.map((repair) => ({
      ...repair,
      labourHours: Object.fromEntries(Object.entries(repair.labourHours).reverse()) as typeof repair.labourHours,
      materials: repair.materials.map(({ per, amount, materialId }) => ({ amount, per, materialId })),
    }));
    expect(repairsForJob({ ...STARTING_CATALOGUE, repairs: turned }).figures).toEqual([]);
  });

  test("a repair that the product no longer has is not invented again", () => {
    const gone = { catalogueId: "x", versionId: "1", figures: [{ repairId: "gone", remainingShare: 0.5 }] };
    expect(catalogueOfJob({ repairs: gone }).repairs).toEqual(STARTING_CATALOGUE.repairs);
  });
});
