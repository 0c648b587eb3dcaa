import { z } from "zod";
import { numberField } from "#lib/units/field.ts";
import { sha256Schema } from "../identity.ts";
import {
  carbonSchema,
  energyByFuelSchema,
  fuelChargeSchema,
  modeEnergySchema,
  savingsSchema,
} from "./energy-result.ts";
import { assumptionSchema, cautionSchema, traceStepSchema, warningSchema } from "./evidence-result.ts";
import {
  housePressureSchema,
  leakageSchema,
  notYetFoundSchema,
  siteResultSchema,
  systemResultSchema,
} from "./leakage-result.ts";
import { laterBillsSchema, loadsSchema } from "./loads-result.ts";
import { measuresInOrderSchema } from "./measures-result.ts";
import { complianceSchema, deemedSchema, economicsSchema, retestSchema, scopeSchema } from "./plan-result.ts";
import { ranged } from "./ranged.ts";
import { RESULT_SCHEMA_VERSION } from "./result-schema-version.ts";

const driverSchema = z
  .strictObject({
    id: z.string(),
    title: z.string(),
    lowUsdPerYear: numberField({ unit: "USD/yr", title: "Yearly saving with this driver at its 10th percentile" }),
    highUsdPerYear: numberField({ unit: "USD/yr", title: "Yearly saving with this driver at its 90th percentile" }),
    varianceShare: numberField({ unit: "share", title: "Share of the spread" }),
    nextMove: z.string(),
  })
  .meta({ id: "Driver", title: "Driver of the range" });

const retestOutcomeSchema = z
  .strictObject({
    differenceCfm25: ranged({ unit: "cfm", title: "Reduction at 25 Pa" }),
    reductionShare: ranged({ unit: "share", title: "Share removed" }),
    probabilityOfMeetingTarget: numberField({ unit: "share", title: "Probability that the target is met" }).nullable(),
    explanation: z.array(z.string()),
  })
  .meta({ id: "Verified", title: "Verified by retest" });

const promisedSchema = z
  .strictObject({ predictedCfm25: ranged({ unit: "cfm", title: "Leakage promised" }), savings: savingsSchema })
  .meta({ id: "Promised", title: "Promised before the work" });

const standardError = (of: string) =>
  numberField({ unit: "USD/yr", title: `Standard error of the ${of}, by the draws` });

/** What other draws would change: the ends of the range of the yearly saving and its middle. */
const convergenceSchema = z
  .strictObject({
    p10StandardErrorUsdPerYear: standardError("10th percentile of the yearly saving"),
    p50StandardErrorUsdPerYear: standardError("median of the yearly saving"),
    p90StandardErrorUsdPerYear: standardError("90th percentile of the yearly saving"),
  })
  .meta({ title: "Convergence of the draws", description: "Null without draws, or with fewer than 100." });

/** Everything the estimate says of one job. The names are a contract: other programs rely on them. */
export const resultSchema = z
  .strictObject({
    schemaVersion: z.literal(RESULT_SCHEMA_VERSION),
    engineVersion: z.string(),
    jobHash: sha256Schema,
    referenceDataHash: sha256Schema,
    draws: numberField({ unit: "count", title: "Draws", min: 0, isInteger: true }),
    seed: z.number().int().meta({ unit: "count", title: "Seed" }),
    basis: z.enum(["predicted", "verified"]),
    place: z.strictObject({
      title: z.string(),
      stationId: z.string(),
      stationTitle: z.string(),
      distanceMiles: numberField({ unit: "mi", title: "Distance to the weather station" }).nullable(),
      heatingDesignF: numberField({ unit: "°F", title: "Heating design temperature, estimated" }),
      coolingDesignF: numberField({ unit: "°F", title: "Cooling design temperature, estimated" }),
    }),
    leakage: leakageSchema,
    systems: z.array(systemResultSchema),
    housePressure: housePressureSchema,
    sites: z.array(siteResultSchema),
    notYetFound: z.array(notYetFoundSchema),
    loads: loadsSchema,
    energy: energyByFuelSchema,
    energyByMonth: z.array(energyByFuelSchema).length(12),
    energyByMode: z.array(modeEnergySchema).meta({
      description: "What `energyByMonth` is made of: heating and cooling equipment, and the blowers.",
    }),
    savings: savingsSchema,
    charges: z.array(fuelChargeSchema),
    carbon: z.array(carbonSchema).meta({
      description:
        "The saving by the plants that follow the load, as in `savings`, and by the grid's average beside it.",
    }),
    measuresInOrder: measuresInOrderSchema
      .nullable()
      .meta({ description: "There when the plan names other measures beside the ducts." }),
    deemed: deemedSchema.nullable(),
    scope: scopeSchema,
    economics: economicsSchema,
    retest: retestSchema.nullable(),
    verified: retestOutcomeSchema.nullable(),
    promised: promisedSchema.nullable().meta({ description: "What was predicted, kept once a retest is in." }),
    laterBills: z
      .array(laterBillsSchema)
      .optional()
      .meta({ description: "There once the day of the work is told and bills from after it are in." }),
    compliance: z.array(complianceSchema),
    drivers: z.array(driverSchema),
    narrowMost: z.string().nullable(),
    convergence: convergenceSchema.nullable(),
    cautions: z.array(cautionSchema),
    assumptions: z.array(assumptionSchema),
    warnings: z.array(warningSchema),
    trace: z.array(traceStepSchema),
  })
  .meta({ id: "Result", title: "Result" });

export type Result = z.output<typeof resultSchema>;
export type Driver = z.output<typeof driverSchema>;
export type Convergence = z.output<typeof convergenceSchema>;
