import { z } from "zod";
import { numberField } from "#lib/units/field.ts";
import { idSchema, isoDateSchema, shortTextSchema } from "./identity.ts";

const equipmentEfficiency = (title: string) =>
  numberField({
    unit: "ratio",
    title,
    description: "AFUE, COP or SEER: in the same measure before and after, since only their ratio counts.",
    min: 0.3,
    max: 40,
  }).optional();

/** One measure beside the duct work: what it changes, and whether it is done before or after the ducts. */
const otherMeasureSchema = z
  .strictObject({
    id: idSchema,
    title: shortTextSchema.meta({ title: "What is done" }),
    order: z
      .enum(["before-ducts", "after-ducts"])
      .meta({ title: "When", description: "Measures of one kind follow each other in the order of the list." }),
    heatingReductionShare: numberField({
      unit: "share",
      title: "Lowers the heating need by",
      min: 0,
      max: 0.9,
    }).optional(),
    coolingReductionShare: numberField({
      unit: "share",
      title: "Lowers the cooling need by",
      min: 0,
      max: 0.9,
    }).optional(),
    heatingEfficiencyBeforeRatio: equipmentEfficiency("Heating efficiency before"),
    heatingEfficiencyAfterRatio: equipmentEfficiency("Heating efficiency after"),
    coolingEfficiencyBeforeRatio: equipmentEfficiency("Cooling efficiency before"),
    coolingEfficiencyAfterRatio: equipmentEfficiency("Cooling efficiency after"),
  })
  .meta({ id: "OtherMeasure", title: "Other measure" });

export type OtherMeasure = z.output<typeof otherMeasureSchema>;

/** What the work has to reach, and how to choose it. */
export const planSchema = z
  .strictObject({
    targetId: idSchema
      .optional()
      .meta({ title: "Target rule", description: "The id of a rule in the table of targets." }),
    targetCfm25: numberField({ unit: "cfm", title: "Own target at 25 Pa", min: 0, max: 5000 }).optional(),
    targetReductionShare: numberField({
      unit: "share",
      title: "Own target as a share to remove",
      above: 0,
      max: 1,
    }).optional(),
    targetMeasure: z.enum(["total", "to-outside"]).optional().meta({ title: "Which leakage the own target limits" }),
    objective: z.enum(["reach-target", "most-value", "crew-hours"]).optional().meta({ title: "What to optimize" }),
    confidenceProbability: numberField({
      unit: "share",
      title: "How sure to reach the target",
      min: 0.5,
      max: 0.99,
    }).optional(),
    budgetUsdCents: numberField({ unit: "US¢", title: "Budget", min: 0, max: 10_000_000, isInteger: true }).optional(),
    crewHours: numberField({ unit: "h", title: "Crew hours at most", above: 0, max: 400 }).optional(),
    offersSprayedSealant: z.boolean().optional().meta({
      title: "The crew can spray sealant from inside",
      description: "It also reaches leaks that nobody has found.",
    }),
    chosenMeasures: z
      .array(z.strictObject({ siteId: idSchema, repairId: idSchema }))
      .max(200)
      .optional()
      .meta({ title: "Measures chosen by hand", description: "Taken as the scope when no solver is at hand." }),
    chosenOptionId: idSchema.optional().meta({ title: "Chosen option" }),
    workDoneDate: isoDateSchema.optional().meta({
      title: "Last day of the work",
      description: "Bills from later days tell what was saved; the estimate goes by those before.",
    }),
    otherHeatingReductionShare: numberField({
      unit: "share",
      title: "Other measures before the sealing lower the heating need by",
      description: "Insulation, air sealing, windows. Sealing the ducts then counts on what they leave.",
      min: 0,
      max: 0.9,
    }).optional(),
    otherCoolingReductionShare: numberField({
      unit: "share",
      title: "Other measures before the sealing lower the cooling need by",
      min: 0,
      max: 0.9,
    }).optional(),
    otherMeasures: z.array(otherMeasureSchema).max(12).optional().meta({
      title: "Other measures, one by one",
      description: "Each saves of what the ones before it leave; with the ducts they are counted once.",
    }),
    deemedRuleId: idSchema.optional().meta({ title: "Program rule for deemed savings" }),
  })
  .meta({ id: "Plan", title: "Plan" });

export type Plan = z.output<typeof planSchema>;
