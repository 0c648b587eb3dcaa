import { z } from "zod";
import { isoDateSchema, sha256Schema, shortTextSchema } from "#lib/job/identity.ts";
import { jobSchema } from "#lib/job/job-schema.ts";
import { citationSchema } from "#lib/job/result/evidence-result.ts";
import { numberField } from "#lib/units/field.ts";

export const CLAIM_SCHEMA_VERSION = "ductmend.claim/1";

/** Claimed numbers by their path in the result: value, and when draws were made 10th and 90th percentile. */
const numbersSchema = z
  .record(
    z.string(),
    z
      .array(z.number().meta({ unit: "as the path ends" }))
      .min(1)
      .max(3),
  )
  .meta({ title: "Claimed numbers", description: "By path in the result document: [value] or [value, p10, p90]." });

const figureSchema = z.strictObject({ value: z.number().meta({ unit: "as the path ends" }), source: citationSchema });

/** What of the reference data the estimate used: named by hash, the values that bear on money and carbon in full. */
const referenceUsedSchema = z
  .strictObject({
    hash: sha256Schema,
    stationId: z.string(),
    placeTitle: z.string(),
    figures: z.record(z.string(), figureSchema),
  })
  .meta({ id: "ReferenceUsed", title: "Reference data used" });

const deemedSchema = z
  .strictObject({
    ruleId: z.string(),
    edition: z.string(),
    coolingKWh: numberField({ unit: "kWh", title: "Cooling saved by the rule" }),
    heatingTherms: numberField({ unit: "therm", title: "Heating saved by the rule" }),
    blowerKWh: numberField({ unit: "kWh", title: "Blower saved by the rule" }),
    heatingKWh: numberField({ unit: "kWh", title: "Electric heating saved by the rule" }).optional(),
    measureLifeYears: numberField({ unit: "yr", title: "Measure life", min: 0, max: 60 }),
    netToGrossRatio: numberField({ unit: "ratio", title: "Net to gross", min: 0, max: 2 }),
  })
  .meta({ id: "ClaimDeemed", title: "Deemed rule and figures" });

/** So many lines of what a file says and this program cannot read stand in a packet; it stays small. */
export const MOST_UNREAD_LINES = 30;
export const LONGEST_UNREAD_LINE = 160;

/** Of a claim whose entries came in a file of an open standard: which file, what it claims itself, what was not read. */
const originSchema = z
  .strictObject({
    standard: z.literal("HPXML"),
    fileName: shortTextSchema,
    fileHash: sha256Schema.meta({ title: "SHA-256 of the file" }),
    savedElectricityKWh: numberField({ unit: "kWh", title: "Electricity saved, as the file claims" }).optional(),
    savedNaturalGasTherms: numberField({ unit: "therm", title: "Gas saved, as the file claims" }).optional(),
    unreadCount: numberField({ unit: "count", title: "What was not read", min: 0, isInteger: true }),
    unread: z.array(z.string().max(LONGEST_UNREAD_LINE)).max(MOST_UNREAD_LINES),
  })
  .meta({ id: "ClaimOrigin", title: "File that the entries came in" });

export type ClaimOrigin = z.output<typeof originSchema>;

/** What is hashed and signed: everything but the hash and the signature themselves. */
export const claimBodySchema = z
  .strictObject({
    schemaVersion: z.literal(CLAIM_SCHEMA_VERSION),
    engineVersion: z.string(),
    job: jobSchema,
    jobHash: sha256Schema,
    reference: referenceUsedSchema,
    draws: numberField({ unit: "count", title: "Draws", min: 0, max: 1_000_000, isInteger: true }),
    seed: z.number().int().min(0).meta({ unit: "count", title: "Seed" }),
    basis: z.enum(["predicted", "verified"]),
    numbers: numbersSchema,
    assumptions: z.array(
      z.tuple([z.string(), z.union([z.number().meta({ unit: "as the path ends" }), z.string(), z.boolean()])]),
    ),
    deemed: deemedSchema.nullable(),
    claimedBy: shortTextSchema,
    claimedOn: isoDateSchema,
    origin: originSchema.optional(),
  })
  .meta({ id: "ClaimBody", title: "Claim" });

export const claimSchema = claimBodySchema
  .extend({
    hash: sha256Schema.meta({ title: "SHA-256 of the canonical claim without hash and signature" }),
    signature: z
      .strictObject({ publicKey: z.string().regex(/^[0-9a-f]{64}$/), value: z.string().regex(/^[0-9a-f]{128}$/) })
      .meta({ id: "Signature", title: "Ed25519 signature of the hash by the organization" })
      .optional(),
  })
  .meta({ id: "Claim", title: "Claim packet" });

export type ClaimBody = z.output<typeof claimBodySchema>;
export type Claim = z.output<typeof claimSchema>;
