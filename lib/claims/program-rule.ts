import { z } from "zod";
import { idSchema, shortTextSchema } from "#lib/job/identity.ts";
import { rebateSchema } from "#lib/job/price-book-schema.ts";
import { numberField } from "#lib/units/field.ts";

export const PROGRAM_RULE_SCHEMA_VERSION = "ductmend.program-rule/1";

/** What a program asks and pays, from one day until the next rule. A rule is followed by another, never edited. */
export const programRuleSchema = z
  .strictObject({
    schemaVersion: z.literal(PROGRAM_RULE_SCHEMA_VERSION),
    title: shortTextSchema,
    houseKinds: z
      .array(z.enum(["site-built", "manufactured", "multifamily"]))
      .min(1)
      .meta({ title: "Houses that may take part" }),
    testKinds: z
      .array(z.enum(["total-leakage", "leakage-to-outside", "blower-door-subtraction"]))
      .min(1)
      .meta({ title: "Tests that count" }),
    deemedRuleId: idSchema.optional().meta({ title: "Deemed savings rule" }),
    measureLifeYears: numberField({ unit: "yr", title: "Measure life", min: 1, max: 40 }),
    netToGrossRatio: numberField({ unit: "ratio", title: "Net to gross", min: 0, max: 2 }),
    evidence: z
      .strictObject({
        photosPerRepairCount: numberField({
          unit: "count",
          title: "Photos of each repair",
          min: 0,
          max: 12,
          isInteger: true,
        }),
        needsInstruments: z.boolean().meta({ title: "Instruments with their calibration dates" }),
        needsNames: z.boolean().meta({ title: "Who tested" }),
      })
      .meta({ id: "EvidenceRule", title: "Evidence" }),
    rebate: rebateSchema.refine(({ pays }) => pays.by !== "share-of-price", {
      error: "A claim does not carry the price: pay a flat amount or by the leakage removed",
      path: ["pays", "by"],
    }),
    inspection: z
      .strictObject({
        confidenceProbability: numberField({ unit: "share", title: "Confidence", min: 0.5, max: 0.999 }),
        precisionShare: numberField({ unit: "share", title: "Precision", min: 0.005, max: 0.5 }),
      })
      .meta({ id: "InspectionRule", title: "Inspections" }),
  })
  .meta({ id: "ProgramRule", title: "Program rule" });

export type ProgramRule = z.output<typeof programRuleSchema>;
