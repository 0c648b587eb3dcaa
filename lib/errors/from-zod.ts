import type { z } from "zod";
import { missing, outOfRange, unknownField, wrongType } from "./field-problems.ts";
import type { FieldProblem } from "./input-problem.ts";
import { InputProblem } from "./input-problem.ts";
import { pointerOf, valueAt } from "./json-pointer.ts";
import { inputSchemaOf, type SchemaNode, schemaNodeAt } from "./schema-node.ts";
import { labelOf, quoted, sentence, shown } from "./schema-words.ts";

/** A list of thousands of wrong values is told by its first ones. */
const MOST_PROBLEMS_TOLD = 50;

/** A schema's verdict on an input. */
interface Verdict {
  error: z.ZodError;
  schema: z.ZodType;
  input: unknown;
}

/**
 * What zod found, each with its field, its value, what is allowed and what to do. One problem a place: the first one
 * found there; fifty places at most.
 */
export function problemsFromZod(verdict: Verdict): FieldProblem[] {
  return allProblems(verdict).slice(0, MOST_PROBLEMS_TOLD);
}

/** The same as an InputProblem to throw. */
export function inputProblemFromZod(verdict: Verdict): InputProblem {
  const all = allProblems(verdict);
  const told = all.slice(0, MOST_PROBLEMS_TOLD);
  const summary = told.map((each) => each.detail).join("; ");
  const untold = all.length - told.length;
  return new InputProblem("input-unusable", told, untold > 0 ? `${summary}; and ${untold} more` : summary);
}

function allProblems({ error, schema, input }: Verdict): FieldProblem[] {
  const root = inputSchemaOf(schema);
  const firstByPointer = new Map<string, FieldProblem>();
  for (const issue of error.issues) {
    for (const each of issueProblems({ issue, root, input, path: issue.path })) {
      if (!firstByPointer.has(each.pointer)) firstByPointer.set(each.pointer, each);
    }
  }
  return [...firstByPointer.values()];
}

interface Place {
  issue: z.core.$ZodIssue;
  root: SchemaNode;
  input: unknown;
  path: readonly PropertyKey[];
}

function issueProblems(place: Place): FieldProblem[] {
  const { issue, root, input, path } = place;
  const node = schemaNodeAt(root, path, input);
  const value = valueAt(input, path);
  const label = labelOf(path, node);
  const pointer = pointerOf(path);

  switch (issue.code) {
    case "unrecognized_keys":
      return issue.keys.map((key) =>
        unknownField({ key, path: [...path, key], known: Object.keys(node?.properties ?? {}), beside: value }),
      );
    case "invalid_union":
      return unionProblems(place, issue, label);
    case "invalid_type":
      return [value === undefined ? missing(pointer, label, node) : wrongType({ pointer, label, node, value, issue })];
    case "too_small":
    case "too_big":
      return [outOfRange({ pointer, label, node, value, issue })];
    case "invalid_value":
      if (value === undefined) return [missing(pointer, label, node)];
      return [
        {
          pointer,
          code: "not-one-of",
          detail: `${label} must be one of ${quoted(issue.values)}, not ${shown(value)}`,
          fix: `Use one of ${quoted(issue.values)}.`,
        },
      ];
    case "not_multiple_of":
      return [
        {
          pointer,
          code: "not-a-multiple",
          detail: `${label} must be a multiple of ${issue.divisor}, not ${shown(value)}`,
          fix: `Round it to a multiple of ${issue.divisor}.`,
        },
      ];
    default:
      return [
        {
          pointer,
          code: "wrong-form",
          detail: `${label} ${shown(value)} does not have the expected form`,
          fix: sentence(issue.message),
        },
      ];
  }
}

function unionProblems(place: Place, issue: z.core.$ZodIssueInvalidUnion, label: string): FieldProblem[] {
  const { root, input, path } = place;
  const value = valueAt(input, path);
  if (issue.errors.length === 0) {
    const options = (issue as { options?: readonly unknown[] }).options ?? [];
    const detail =
      value === undefined ? `${label} is missing` : `${label} must be one of ${quoted(options)}, not ${shown(value)}`;
    return [{ pointer: pointerOf(path), code: "not-one-of", detail, fix: `Use one of ${quoted(options)}.` }];
  }
  // The branch with the fewest complaints is the one that was meant.
  const nearest = issue.errors.reduce((best, branch) => (branch.length < best.length ? branch : best));
  return nearest.flatMap((inner) => issueProblems({ issue: inner, root, input, path: [...path, ...inner.path] }));
}
