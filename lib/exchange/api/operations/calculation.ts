import { z } from "zod";
import { jobSchema } from "#lib/job/job-schema.ts";
import { citationSchema } from "#lib/job/result/evidence-result.ts";
import { resultSchema } from "#lib/job/result/result-schema.ts";
import { numberField } from "#lib/units/field.ts";
import { operation } from "../api-operation.ts";

const MOST_DRAWS = 10_000;

const methodSchema = z
  .strictObject({ id: z.string(), title: z.string(), sources: z.array(citationSchema) })
  .meta({ id: "MethodCard", title: "Method" });

const fieldProblemSchema = z
  .strictObject({ pointer: z.string(), detail: z.string(), code: z.string(), fix: z.string() })
  .meta({ id: "FieldProblem", title: "What is wrong with one value" });

const differenceSchema = z
  .strictObject({
    path: z.string(),
    which: z.enum(["value", "p10", "p90"]),
    claimed: z.number().nullable().meta({ unit: "as the path ends" }),
    recomputed: z.number().nullable().meta({ unit: "as the path ends" }),
    relativeDifference: z.number().meta({ unit: "ratio", title: "Relative difference" }),
  })
  .meta({ id: "NumberDifference", title: "A number that comes out differently" });

const recomputedShape = {
  hash: z.string().meta({ title: "The claim's own hash" }),
  largestRelativeDifference: z.number().meta({
    unit: "ratio",
    title: "The most that a number is apart from its claimed one",
    description: "0: all the same to the last bit. Up to 1e-9 a claim counts as the same.",
  }),
  notes: z.array(z.string()),
};

export const verdictSchema = z
  .discriminatedUnion("outcome", [
    z.strictObject({ outcome: z.literal("same"), ...recomputedShape }),
    z.strictObject({ outcome: z.literal("differs"), differences: z.array(differenceSchema), ...recomputedShape }),
    z.strictObject({ outcome: z.literal("invalid"), errors: z.array(fieldProblemSchema) }),
  ])
  .meta({ id: "RecomputeVerdict", title: "Whether a claim comes out the same" });

export const listMethods = operation({
  operationId: "listMethods",
  method: "GET",
  path: "/methods",
  group: "Calculate",
  title: "The catalogue of methods",
  description: "Every calculation with the sources it follows.",
  scope: "calculate",
  answer: z.strictObject({ items: z.array(methodSchema) }),
  status: 200,
  example: {},
});

export const runOneMethod = operation({
  operationId: "runMethod",
  method: "POST",
  path: "/methods/{methodId}",
  group: "Calculate",
  title: "One calculation",
  description:
    "The body is the method's input, as its page under /methods lists it; the answer is its output, with each default that stood in under `assumptions`.",
  scope: "calculate",
  body: z.record(z.string(), z.unknown()),
  answer: z.record(z.string(), z.unknown()),
  status: 200,
  example: { path: { methodId: "air-density" }, body: { temperatureF: 68 } },
});

export const estimateJob = operation({
  operationId: "estimate",
  method: "POST",
  path: "/estimate",
  group: "Calculate",
  title: "The whole estimate of a job",
  description:
    "From the readings to leakage, energy, money, scope and retest plan. Nothing is stored. Without `draws` every number is only a value; the same job and seed give the same bytes.",
  scope: "calculate",
  body: z
    .strictObject({
      job: jobSchema,
      draws: numberField({
        unit: "count",
        title: "Draws for the ranges",
        min: 0,
        max: MOST_DRAWS,
        isInteger: true,
      }).optional(),
      seed: numberField({ unit: "count", title: "Seed", min: 0, max: 4_294_967_295, isInteger: true }).optional(),
    })
    .meta({ id: "EstimateRequest", title: "What to estimate" }),
  answer: resultSchema,
  status: 200,
  example: { body: { job: "{job:inside-ducts-furnace}", draws: 100, seed: 1 } },
});

export const recomputePacket = operation({
  operationId: "recompute",
  method: "POST",
  path: "/recompute",
  group: "Calculate",
  title: "Whether a claim comes out the same",
  description:
    "Recomputes a claim packet from its own inputs: same, differs (which number, by how much) or invalid (where). Each of them is an answer, not an error.",
  scope: "calculate",
  body: z
    .strictObject({ claim: z.record(z.string(), z.unknown()), withDraws: z.boolean().optional() })
    .meta({ id: "RecomputeRequest", title: "What to recompute" }),
  answer: verdictSchema,
  status: 200,
  example: { body: { claim: "{claim}", withDraws: false } },
});
