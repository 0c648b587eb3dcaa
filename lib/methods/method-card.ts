import type { z } from "zod";
import type { Citation } from "#lib/sources/source.ts";

/** A published or derived value that a method must reproduce. Shown with a pass mark on the method's page. */
export interface MethodCheck<Input> {
  name: string;
  source: Citation;
  input: Input;
  /** Output path (`"densityLbPerFt3"`, `"sites.0.cfm25"`) → expected value. */
  expected: Readonly<Record<string, number>>;
  relativeTolerance: number;
  /** Where an expected value is 0: the size of the numbers that cancel, to which the tolerance is then relative. */
  scale?: number;
  toleranceReason: string;
}

/** Why a default may stand in for a missing input. */
export interface MethodDefault {
  value: number | string | boolean;
  /** The input whose value stands in, when the default is not a fixed value; `value` then names it. */
  sameAs?: string;
  unit: string;
  reason: string;
  source: Citation;
}

/** One calculation as the catalogue, the command line and the web show it. */
export interface MethodCard<InputSchema extends z.ZodObject = z.ZodObject, Output extends object = object> {
  id: string;
  title: string;
  group: "air" | "measure" | "apportion" | "distribution" | "climate" | "loads" | "savings" | "retest";
  /** One plain sentence: what it computes. */
  summary: string;
  equation: string;
  /** Where it holds, and what it refuses. */
  validRange: string;
  leftOut: string;
  sources: readonly Citation[];
  input: InputSchema;
  output: z.ZodType<Output>;
  /**
   * The defaults of optional inputs, by field name; inside a list `"savings.*.escalationRate"`. Every default used is
   * listed as an assumption.
   */
  defaults: Readonly<Record<string, MethodDefault>>;
  /** A method, not a property: so that a card of one input fits a list of cards of any. */
  compute(input: z.output<InputSchema>): Output;
  checks: readonly MethodCheck<z.input<InputSchema>>[];
}

/** Keeps the card's own types while checking its form. */
export function defineMethod<InputSchema extends z.ZodObject, Output extends object>(
  card: MethodCard<InputSchema, Output>,
): MethodCard<InputSchema, Output> {
  return card;
}
