import { z } from "zod";
import { idSchema, isoDateSchema, noteSchema, shortTextSchema } from "#lib/job/identity.ts";
import { LEAK_KIND_IDS } from "#lib/job/leak-kinds.ts";
import { REPAIR_FIGURE_FIELDS } from "#lib/job/repair-figures.ts";
import { numberField } from "#lib/units/field.ts";
import { NEVER_IDS, PREREQUISITE_IDS } from "./repair-rules.ts";

export const REPAIR_CATALOGUE_SCHEMA_VERSION = "ductmend.repairs/1";

const citedSchema = z
  .strictObject({ sourceId: z.string(), locator: z.string().optional(), reason: shortTextSchema })
  .meta({ id: "RepairEvidence", title: "Where a figure is from" });

const repairSchema = z
  .strictObject({
    id: idSchema,
    title: shortTextSchema.meta({ title: "As the crew says it" }),
    plainTitle: shortTextSchema.meta({ title: "As a homeowner reads it" }),
    reachesWholeSystem: z.boolean().meta({ title: "Done once for a whole system, from inside" }),
    fits: z.array(z.enum(LEAK_KIND_IDS)).min(1).meta({ title: "Kinds of leak it fits" }),
    widestGapIn: numberField({ unit: "in", title: "Widest gap it closes", above: 0, max: 40 }).optional(),
    replacesDuct: z.boolean().meta({ title: "Puts in new duct" }),
    isSafeForOwner: z.boolean().meta({
      title: "An owner can do it alone",
      description: "From a room, without ladder, attic, crawlspace, electricity or anything that burns fuel.",
    }),
    runLengthFt: numberField({ unit: "ft", title: "Usual length of new duct", above: 0, max: 200 }).optional(),
    covers: z.array(z.enum(LEAK_KIND_IDS)).optional().meta({
      title: "Takes along on the same run or return path",
      description: "Leaks of these kinds are closed with it and are not repaired by themselves.",
    }),
    sparesHandSealingUpToIn: numberField({
      unit: "in",
      title: "Closes gaps up to this width so well that a hand seals none of them",
      above: 0,
      max: 1,
    }).optional(),
    isOffered: z
      .boolean()
      .optional()
      .meta({ title: "Offered by this crew", description: "True when nothing is said." }),
    steps: z.array(shortTextSchema).min(1).max(10),
    materials: REPAIR_FIGURE_FIELDS.materials,
    labourHours: REPAIR_FIGURE_FIELDS.labourHours,
    remainingShare: REPAIR_FIGURE_FIELDS.remainingShare,
    remainingSpreadShare: REPAIR_FIGURE_FIELDS.remainingSpreadShare,
    prerequisites: z.array(z.enum(PREREQUISITE_IDS)).max(PREREQUISITE_IDS.length),
    never: z.array(z.enum(NEVER_IDS)).max(NEVER_IDS.length),
    validity: shortTextSchema.meta({ title: "Where the figures hold" }),
    evidence: z.strictObject({
      effect: citedSchema,
      labour: citedSchema,
      materials: citedSchema,
      relations: citedSchema.optional(),
    }),
  })
  .meta({ id: "Repair", title: "Repair" });

const changeSchema = z
  .strictObject({
    versionId: idSchema,
    basedOnVersionId: idSchema,
    date: isoDateSchema,
    by: shortTextSchema,
    reason: noteSchema,
    changes: z.array(z.strictObject({ repairId: idSchema, field: z.string(), before: z.string(), after: z.string() })),
  })
  .meta({ id: "RepairCatalogueChange", title: "Change of the repair catalogue" });

/** An organization's repairs. A version is never changed; an edit makes the next one and says what it changed. */
export const repairCatalogueSchema = z
  .strictObject({
    schemaVersion: z.literal(REPAIR_CATALOGUE_SCHEMA_VERSION),
    id: idSchema,
    versionId: idSchema,
    repairs: z.array(repairSchema).min(1).max(200),
    history: z.array(changeSchema).max(1000),
  })
  .meta({ id: "RepairCatalogue", title: "Repair catalogue" });

export type Repair = z.output<typeof repairSchema>;
export type RepairCatalogue = z.output<typeof repairCatalogueSchema>;
export type RepairCatalogueChange = z.output<typeof changeSchema>;
