import { z } from "zod";
import { numberField } from "#lib/units/field.ts";
import { idSchema, shortTextSchema } from "./identity.ts";

const hours = (title: string) => numberField({ unit: "h", title, above: 0, max: 80 });

/** How much of a material a repair takes. The unit is the price book's. */
export const repairMaterialSchema = z
  .strictObject({
    materialId: idSchema,
    amount: z.number().positive().max(1000).meta({ unit: "as the price book counts the material", title: "Amount" }),
    per: z.enum(["leak", "gap-foot", "run-foot", "system"]).meta({ title: "For each" }),
  })
  .meta({ id: "RepairMaterial", title: "Material of a repair" });

/** The figures of a repair that an organization sets for itself. */
export const REPAIR_FIGURE_FIELDS = {
  remainingShare: numberField({ unit: "share", title: "Leakage expected to be left", min: 0, max: 1 }),
  remainingSpreadShare: numberField({
    unit: "share",
    title: "Spread of what is left",
    description: "Standard deviation from one leak to the next.",
    min: 0,
    max: 0.5,
  }),
  labourHours: z
    .strictObject({ easy: hours("Easy to reach"), moderate: hours("Moderate"), hard: hours("Hard to reach") })
    .meta({ title: "Person hours by reach" }),
  materials: z.array(repairMaterialSchema).max(12),
} as const;

const figuresSchema = z
  .strictObject({
    repairId: idSchema,
    isOffered: z.boolean().optional().meta({ title: "Offered by this crew" }),
    remainingShare: REPAIR_FIGURE_FIELDS.remainingShare.optional(),
    remainingSpreadShare: REPAIR_FIGURE_FIELDS.remainingSpreadShare.optional(),
    labourHours: REPAIR_FIGURE_FIELDS.labourHours.optional(),
    materials: REPAIR_FIGURE_FIELDS.materials.optional(),
  })
  .meta({ id: "RepairFigures", title: "Own figures of a repair" });

/**
 * The repairs of an organization as a job carries them: only what differs from the catalogue that the product starts
 * with, so that a claim can be recomputed from the job alone.
 */
export const jobRepairsSchema = z
  .strictObject({
    catalogueId: idSchema,
    versionId: idSchema.meta({ title: "Version" }),
    title: shortTextSchema.optional(),
    retestsCount: numberField({
      unit: "count",
      title: "Own retests that moved the effects",
      min: 0,
      max: 1_000_000,
      isInteger: true,
    }).optional(),
    figures: z.array(figuresSchema).max(200),
  })
  .meta({ id: "JobRepairs", title: "Repairs" });

export type JobRepairs = z.output<typeof jobRepairsSchema>;
export type RepairFigures = JobRepairs["figures"][number];
