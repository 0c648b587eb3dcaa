import type { z } from "zod";
import type { FieldProblem } from "./input-problem.ts";
import { pointerOf, valueAt } from "./json-pointer.ts";
import { nearestName } from "./nearest-name.ts";
import type { SchemaNode } from "./schema-node.ts";
import { allowedRange, kindOf, quoted, shown, withArticle } from "./schema-words.ts";

export function missing(pointer: string, label: string, node: SchemaNode | undefined): FieldProblem {
  const allowed = allowedRange(node);
  const wanted = node?.enum ? `one of ${quoted(node.enum)}` : withArticle(kindOf(node));
  return {
    pointer,
    code: "missing",
    detail: `${label} is missing`,
    fix: `Add ${wanted}${allowed ? ` ${allowed}` : ""}.`,
  };
}

export function wrongType({
  pointer,
  label,
  node,
  value,
  issue,
}: {
  pointer: string;
  label: string;
  node: SchemaNode | undefined;
  value: unknown;
  issue: z.core.$ZodIssueInvalidType;
}): FieldProblem {
  const expected = kindOf(node) ?? issue.expected;
  if (typeof value === "number" && !Number.isFinite(value)) {
    return {
      pointer,
      code: "not-finite",
      detail: `${label} must be a finite number, not ${value}`,
      fix: "Enter the number itself, or leave the field out if it may be left out.",
    };
  }
  const looksNumeric = expected !== undefined && /number/.test(expected) && typeof value === "string";
  const isNumericText = looksNumeric && value.trim() !== "" && Number.isFinite(Number(value));
  return {
    pointer,
    code: "wrong-type",
    detail: `${label} must be ${withArticle(expected)}, not ${shown(value)}`,
    fix: isNumericText ? `Remove the quotes: ${value.trim()}.` : `Use ${withArticle(expected)} here.`,
  };
}

export function outOfRange({
  pointer,
  label,
  node,
  value,
  issue,
}: {
  pointer: string;
  label: string;
  node: SchemaNode | undefined;
  value: unknown;
  issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig;
}): FieldProblem {
  const isSmall = issue.code === "too_small";
  const limit = isSmall ? issue.minimum : issue.maximum;
  const code = isSmall ? "too-small" : "too-big";
  if (issue.origin === "array" || issue.origin === "set") {
    const given = Array.isArray(value) ? value.length : 0;
    return {
      pointer,
      code,
      detail: `${label} must have at ${isSmall ? "least" : "most"} ${limit} ${limit === 1 ? "entry" : "entries"}, not ${given}`,
      fix: isSmall ? "Add the entries that are missing." : "Remove entries, or send them in several parts.",
    };
  }
  if (issue.origin === "string") {
    const bound = `at ${isSmall ? "least" : "most"} ${limit} character${Number(limit) === 1 ? "" : "s"}`;
    return { pointer, code, detail: `${label} must have ${bound}`, fix: `Use ${bound}.` };
  }
  const allowed = allowedRange(node) || `${isSmall ? "of at least" : "of at most"} ${limit}`;
  return {
    pointer,
    code,
    detail: `${label} must be ${withArticle(kindOf(node))} ${allowed}, not ${shown(value)}`,
    fix: `Enter ${withArticle(kindOf(node))} ${allowed}.`,
  };
}

export function unknownField({
  key,
  path,
  known,
  beside,
}: {
  key: string;
  path: readonly PropertyKey[];
  known: readonly string[];
  beside: unknown;
}): FieldProblem {
  // A field that is there already was not the one meant.
  const absent = known.filter((name) => valueAt(beside, [name]) === undefined);
  const meant = nearestName(key, absent);
  return {
    pointer: pointerOf(path),
    code: "unknown-field",
    detail: `${JSON.stringify(key)} is not a known field${meant ? `; did you mean ${JSON.stringify(meant)}?` : ""}`,
    fix: meant ? `Rename it to ${JSON.stringify(meant)}, or remove it.` : `Remove it. Known here: ${known.join(", ")}.`,
  };
}
