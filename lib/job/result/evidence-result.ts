import { z } from "zod";
import { idSchema, shortTextSchema } from "../identity.ts";

export const citationSchema = z
  .strictObject({ sourceId: z.string(), locator: z.string().optional() })
  .meta({ id: "Citation", title: "Source" });

const scalarSchema = z.union([
  z.number().meta({ unit: "as stated in `unit`", title: "Value" }),
  z.string(),
  z.boolean(),
]);

/** A value that was not measured or told, but assumed: where it stands, what, why, how far it may be off. */
export const assumptionSchema = z
  .strictObject({
    path: z.string().meta({ title: "JSON Pointer of the field that would replace it" }),
    title: shortTextSchema,
    value: scalarSchema,
    unit: z.string(),
    reason: z.string(),
    source: citationSchema,
    low: z.number().meta({ unit: "as stated in `unit`", title: "Low" }).optional(),
    high: z.number().meta({ unit: "as stated in `unit`", title: "High" }).optional(),
  })
  .meta({ id: "Assumption", title: "Assumption" });

export const warningSchema = z
  .strictObject({
    code: z.string(),
    path: z.string(),
    severity: z.enum(["note", "doubt", "problem"]),
    what: z.string(),
    why: z.string(),
    nextMove: z.string(),
  })
  .meta({ id: "Warning", title: "Warning" });

export const cautionSchema = z
  .strictObject({
    id: z.string(),
    title: z.string(),
    text: z.string(),
    appliesTo: z.array(idSchema),
    source: citationSchema,
  })
  .meta({ id: "Caution", title: "Caution" });

/** One step of the calculation, so that every number shown can be followed back. */
export const traceStepSchema = z
  .strictObject({
    id: z.string(),
    methodId: z.string(),
    title: z.string(),
    inputs: z.record(z.string(), z.union([scalarSchema, z.null()])),
    outputs: z.record(z.string(), scalarSchema),
    source: citationSchema,
  })
  .meta({ id: "TraceStep", title: "Step of the calculation" });

export type Assumption = z.output<typeof assumptionSchema>;
export type Warning = z.output<typeof warningSchema>;
export type Caution = z.output<typeof cautionSchema>;
export type TraceStep = z.output<typeof traceStepSchema>;
