import { inputProblemFromZod } from "#lib/errors/from-zod.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { pointerOf } from "#lib/errors/json-pointer.ts";
import { nearestName } from "#lib/errors/nearest-name.ts";
import type { Citation } from "#lib/sources/source.ts";
import { METHODS } from "./catalogue.ts";
import type { MethodCard, MethodDefault } from "./method-card.ts";

/** A default that stood in for an input that was left out. */
export interface UsedDefault {
  /** JSON Pointer of the input that would replace it: `"#/exponent"`, `"#/savings/0/escalationRate"`. */
  path: string;
  value: number | string | boolean;
  unit: string;
  reason: string;
  source: Citation;
}

export interface MethodResult {
  output: Readonly<Record<string, unknown>>;
  assumptions: readonly UsedDefault[];
}

/** The card of a method. @throws InputProblem `method-unknown`, naming the nearest one. */
export function methodById(id: string): MethodCard {
  const card = METHODS.find((each) => each.id === id);
  if (card !== undefined) return card;
  const meant = nearestName(
    id,
    METHODS.map((each) => each.id),
  );
  const detail = `There is no method ${JSON.stringify(id.slice(0, 80))}`;
  const fix = meant ? `Did you mean ${JSON.stringify(meant)}?` : "List the methods with `calc --list`.";
  throw new InputProblem("method-unknown", [{ pointer: "#", detail, fix, code: "method-unknown" }], detail);
}

/**
 * Runs one method of the catalogue on input that nobody has checked yet.
 * @throws InputProblem `method-unknown`, `input-unusable` (the form is wrong, each field named) or `outside-range` (the
 * form is right, the physics is not).
 */
export function runMethod(id: string, input: unknown): MethodResult {
  return runCard(methodById(id), input);
}

/** The same for a card at hand. */
export function runCard(card: MethodCard, input: unknown): MethodResult {
  const parsed = card.input.safeParse(input);
  if (!parsed.success) throw inputProblemFromZod({ error: parsed.error, schema: card.input, input });
  const output = card.compute(parsed.data) as Readonly<Record<string, unknown>>;
  refuseNonFinite(output);
  return { output, assumptions: usedDefaults(card, parsed.data) };
}

/** One JSON object for the command line and the API: the output's fields at the top, the assumptions beside them. */
export function methodResultDocument({ output, assumptions }: MethodResult): Readonly<Record<string, unknown>> {
  return { ...output, assumptions };
}

/**
 * NaN and infinity turn into null in JSON, so they never leave a method: values far beyond any house, each allowed
 * alone, are refused together.
 */
function refuseNonFinite(value: unknown, path: readonly string[] = []): void {
  if (typeof value === "number" && !Number.isFinite(value)) {
    throw new InputProblem("outside-range", [
      {
        pointer: "#",
        detail: `These values together leave ${path.join(".")} without a finite number`,
        fix: "Look for a value that is far too small or too large, such as one in another unit.",
        code: "result-not-finite",
      },
    ]);
  }
  if (typeof value !== "object" || value === null) return;
  for (const [key, each] of Object.entries(value)) refuseNonFinite(each, [...path, key]);
}

function usedDefaults(card: MethodCard, input: Record<string, unknown>): UsedDefault[] {
  return Object.entries(card.defaults).flatMap(([pattern, methodDefault]) =>
    missingPaths(input, pattern.split(".")).map((path) => ({
      path: pointerOf(path),
      value: standIn(methodDefault, input),
      unit: methodDefault.unit,
      reason: methodDefault.reason,
      source: methodDefault.source,
    })),
  );
}

function standIn(methodDefault: MethodDefault, input: Record<string, unknown>): UsedDefault["value"] {
  if (methodDefault.sameAs === undefined) return methodDefault.value;
  return (input[methodDefault.sameAs] as UsedDefault["value"] | undefined) ?? methodDefault.value;
}

/** Every place that a pattern such as `savings.*.escalationRate` names and where nothing was given. */
function missingPaths(value: unknown, [key, ...rest]: readonly string[]): string[][] {
  if (typeof value !== "object" || value === null || key === undefined) return [];
  const keys = key === "*" ? Object.keys(value) : [key];
  return keys.flatMap((each) => {
    const child = (value as Record<string, unknown>)[each];
    if (rest.length > 0) return missingPaths(child, rest).map((path) => [each, ...path]);
    return child === undefined ? [[each]] : [];
  });
}
