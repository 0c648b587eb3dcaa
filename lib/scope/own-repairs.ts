import type { JobRepairs } from "#lib/job/repair-figures.ts";
import { repairsForJob } from "./job-repairs.ts";
import { withLearnedEffects } from "./learned-catalogue.ts";
import { type LearnedEffect, learnRepairEffects, type SealingRetest } from "./learning.ts";
import type { RepairCatalogue } from "./repair-schema.ts";
import { STARTING_CATALOGUE } from "./repairs.ts";

/** The version before an organization's first one: the repairs that the product starts with, under its own name. */
export const untouchedRepairs = (id: string): RepairCatalogue => ({ ...STARTING_CATALOGUE, id, versionId: "0" });

/** An organization's repairs with those that the product has gained since. */
export function withNewRepairs(catalogue: RepairCatalogue): RepairCatalogue {
  const known = new Set(catalogue.repairs.map(({ id }) => id));
  return {
    ...catalogue,
    repairs: [...catalogue.repairs, ...STARTING_CATALOGUE.repairs.filter(({ id }) => !known.has(id))],
  };
}

/** What the retests of an organization teach about its repairs. A retest with a repair that is gone is left out. */
export function learnedEffects(catalogue: RepairCatalogue, retests: readonly SealingRetest[]): LearnedEffect[] {
  const known = new Set(catalogue.repairs.map(({ id }) => id));
  return learnRepairEffects({
    catalogue: catalogue.repairs.map(({ id, remainingShare, remainingSpreadShare }) => ({
      repairId: id,
      remainingShare,
      remainingSpreadShare,
    })),
    retests: retests.filter(({ treated }) => treated.every(({ repairId }) => known.has(repairId))),
  });
}

/** Shares are stated to a ten-thousandth; what a job states is what is calculated with. */
const STEPS = 10_000;
const stated = (share: number): number => Math.round(share * STEPS) / STEPS;

/** An organization's repairs as a new job takes them, with the learned effects where it wants them. */
export function repairsInForce({
  catalogue,
  usesRetests,
  retests,
}: {
  catalogue: RepairCatalogue;
  usesRetests: boolean;
  retests: readonly SealingRetest[];
}): JobRepairs {
  if (!usesRetests || retests.length === 0) return repairsForJob(catalogue);
  const learned = learnedEffects(catalogue, retests);
  const moved = withLearnedEffects(catalogue, learned);
  const repairs = moved.repairs.map((repair) => ({
    ...repair,
    remainingShare: stated(repair.remainingShare),
    remainingSpreadShare: stated(repair.remainingSpreadShare),
  }));
  return repairsForJob({ ...moved, repairs }, retests.length);
}
