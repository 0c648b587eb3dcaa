import { z } from "zod";
import { claimSchema } from "#lib/claims/claim-schema.ts";
import { CLAIM_STATES } from "#lib/claims/claim-state.ts";
import { isoDateSchema, noteSchema, sha256Schema, shortTextSchema } from "#lib/job/identity.ts";
import { numberField } from "#lib/units/field.ts";
import { operation } from "../api-operation.ts";
import { instantSchema, pageOf, pageQuery, rowIdSchema } from "../list-schemas.ts";

const stateSchema = z.enum(CLAIM_STATES).meta({ title: "State" });

const programSchema = z
  .strictObject({ id: rowIdSchema, organizationId: rowIdSchema, name: z.string(), description: z.string() })
  .meta({ id: "Program", title: "A program that receives claims" });

const claimRecordSchema = z
  .strictObject({
    id: rowIdSchema,
    contractorId: rowIdSchema,
    programId: rowIdSchema,
    reference: z.string().meta({ title: "The claim's number at its contractor" }),
    state: stateSchema,
    packetHash: sha256Schema,
    engineVersion: z.string(),
    completedOn: isoDateSchema,
    beforeToOutsideCfm25: numberField({ unit: "cfm", title: "To outside before" }),
    afterToOutsideCfm25: numberField({ unit: "cfm", title: "To outside after" }),
    savedElectricityKWh: numberField({ unit: "kWh", title: "Electricity saved a year" }),
    savedNaturalGasTherms: numberField({ unit: "therm", title: "Gas saved a year" }),
    rebateUsdCents: numberField({ unit: "US¢", title: "Rebate by the program's rule", isInteger: true }),
    recomputeOutcome: z.enum(["same", "differs", "invalid"]).nullable(),
    flagCount: numberField({ unit: "count", title: "Flags", min: 0, isInteger: true }),
    submittedAt: instantSchema,
  })
  .meta({ id: "ClaimRecord", title: "A claim in a list" });

const flagSchema = z
  .strictObject({
    code: z.string(),
    evidence: z.unknown(),
    innocentExplanation: z.string(),
  })
  .meta({ id: "ClaimFlag", title: "Something to ask about, never an accusation" });

const eventSchema = z
  .strictObject({
    kind: z.enum(["comment", "decision"]),
    text: z.string(),
    fromState: stateSchema.optional(),
    toState: stateSchema.optional(),
    createdAt: instantSchema,
  })
  .meta({ id: "ClaimEvent", title: "Something said or decided" });

const claimDetailSchema = claimRecordSchema
  .extend({ flags: z.array(flagSchema), events: z.array(eventSchema) })
  .meta({ id: "ClaimDetail", title: "A claim with what was said of it" });

export const listPrograms = operation({
  operationId: "listPrograms",
  method: "GET",
  path: "/programs",
  group: "Claims",
  title: "Programs",
  description: "Those that the organization runs or was invited to.",
  scope: "claims:read",
  answer: z.strictObject({ items: z.array(programSchema) }),
  status: 200,
  example: {},
});

export const listClaims = operation({
  operationId: "listClaims",
  method: "GET",
  path: "/claims",
  group: "Claims",
  title: "Claims made or received",
  description: "The newest first, page by page.",
  scope: "claims:read",
  query: z.strictObject({
    ...pageQuery,
    state: stateSchema.optional(),
    programId: rowIdSchema.optional(),
    outcome: z.enum(["same", "differs", "invalid", "not-yet"]).optional().meta({ title: "What recomputing said" }),
    reference: shortTextSchema.optional().meta({ title: "Start of the number" }),
  }),
  answer: pageOf(claimRecordSchema),
  status: 200,
  example: { query: { state: "submitted" } },
});

export const submitClaim = operation({
  operationId: "submitClaim",
  method: "POST",
  path: "/claims",
  group: "Claims",
  title: "Hand in a claim",
  description:
    "Either the newest revision of a stored job, or a packet that was made elsewhere. It is recomputed and looked through at once, and nobody changes it from here on.",
  scope: "claims:write",
  body: z
    .union([
      z.strictObject({ programId: rowIdSchema, jobId: rowIdSchema }),
      z.strictObject({ programId: rowIdSchema, reference: shortTextSchema, claim: claimSchema }),
    ])
    .meta({ id: "NewClaim", title: "A claim to hand in" }),
  answer: claimDetailSchema,
  status: 201,
  example: { body: { programId: "{programId}", reference: "example-1", claim: "{claim}" } },
});

export const receiveHouse = operation({
  operationId: "receiveHpxmlClaim",
  method: "POST",
  path: "/claims/hpxml",
  group: "Claims",
  title: "Take in a claim as HPXML",
  description:
    "For a program: one house as HPXML 4.2, with its leakage before and after the work. The numbers are calculated from the file; `unread` lists each thing in it that was not read or had to be taken otherwise.",
  scope: "claims:write",
  body: z
    .strictObject({
      programId: rowIdSchema.optional(),
      contractorId: rowIdSchema.meta({ title: "Whose claim it is" }),
      fileName: shortTextSchema,
      hpxml: z.string().min(1).meta({ title: "Text of the file" }),
    })
    .meta({ id: "NewHpxmlClaim", title: "A claim as HPXML" }),
  answer: z
    .strictObject({ claim: claimDetailSchema, unread: z.array(z.string()) })
    .meta({ id: "HpxmlClaim", title: "The claim, and what of the file was not read" }),
  status: 201,
  example: { body: { contractorId: "{contractorId}", fileName: "house.xml", hpxml: "{hpxml}" } },
});

export const getClaim = operation({
  operationId: "getClaim",
  method: "GET",
  path: "/claims/{claimId}",
  group: "Claims",
  title: "One claim",
  description: "With its flags, each with evidence and an innocent explanation, and what was said and decided.",
  scope: "claims:read",
  answer: claimDetailSchema,
  status: 200,
  example: { path: { claimId: "{claimId}" } },
});

export const getPacket = operation({
  operationId: "getClaimPacket",
  method: "GET",
  path: "/claims/{claimId}/packet",
  group: "Claims",
  title: "The packet of a claim",
  description: "Everything that is needed to recompute it, as it was handed in.",
  scope: "claims:read",
  answer: claimSchema,
  status: 200,
  example: { path: { claimId: "{claimId}" } },
});

export const commentOnClaim = operation({
  operationId: "commentOnClaim",
  method: "POST",
  path: "/claims/{claimId}/comments",
  group: "Claims",
  title: "Say something about a claim",
  description: "Both sides read it.",
  scope: "claims:write",
  body: z.strictObject({ text: noteSchema }).meta({ id: "NewComment", title: "A comment" }),
  answer: claimDetailSchema,
  status: 201,
  example: { path: { claimId: "{claimId}" }, body: { text: "The photos are on the crew's tablet." } },
});

export const decideOnClaim = operation({
  operationId: "decideOnClaim",
  method: "POST",
  path: "/claims/{claimId}/decisions",
  group: "Claims",
  title: "Take a claim a step further",
  description:
    "With a reason. `from` is the state that the decision was made on; when it changed meanwhile, the answer is a conflict.",
  scope: "claims:decide",
  body: z
    .strictObject({ from: stateSchema, to: stateSchema, reason: noteSchema })
    .meta({ id: "NewDecision", title: "A decision" }),
  answer: claimDetailSchema,
  status: 201,
  example: {
    path: { claimId: "{claimId}" },
    body: { from: "submitted", to: "in_review", reason: "Taking this one." },
  },
});
