import { z } from "zod";
import { shortTextSchema } from "#lib/job/identity.ts";
import { numberField } from "#lib/units/field.ts";
import { logoSchema } from "./letterhead/logo.ts";

const line = shortTextSchema;

/** What the firm does when the second test misses the goal. Without one the paper says that nothing was agreed. */
const missedGoalSchema = z
  .discriminatedUnion("rule", [
    z.strictObject({ rule: z.literal("work-on") }),
    z.strictObject({
      rule: z.literal("credit"),
      creditUsdCents: numberField({ unit: "US¢", title: "Taken off the price", min: 0, isInteger: true }),
    }),
    z.strictObject({ rule: z.literal("re-offer") }),
  ])
  .meta({ id: "MissedGoal", title: "If the goal is missed" });

const financingSchema = z
  .strictObject({
    lender: line,
    yearlyRate: numberField({ unit: "ratio", title: "Interest a year", min: 0, max: 0.5 }),
    monthsCount: numberField({ unit: "count", title: "Months", min: 1, max: 240, isInteger: true }),
  })
  .meta({ id: "Financing", title: "Paid over time" });

/** The firm as its papers show it, and what it promises. An organization keeps it; every part may be missing. */
export const contractorSchema = z
  .strictObject({
    name: line,
    address: line.optional(),
    phone: line.optional(),
    email: line.optional(),
    license: line.optional(),
    paymentTerms: line.optional(),
    missedGoal: missedGoalSchema.optional(),
    financing: financingSchema.optional(),
    logo: logoSchema.optional(),
    accentColor: z
      .string()
      .regex(/^#[0-9a-f]{6}$/, "Enter # and six digits from 0 to f")
      .optional(),
  })
  .meta({ id: "Contractor", title: "Contractor" });

export type Contractor = z.output<typeof contractorSchema>;
