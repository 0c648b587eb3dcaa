import type { SchemaNode } from "./schema-node.ts";

/** `from 10 to 7,000 cfm`, `above 0 Pa`; empty where any number may stand. */
export function allowedRange(node: SchemaNode | undefined): string {
  if (node === undefined) return "";
  const unit = node.unit !== undefined && !/^(ratio|share|count|of .*|any.*)$/.test(node.unit) ? ` ${node.unit}` : "";
  const least = tellable(node.minimum);
  const most = tellable(node.maximum);
  if (least !== undefined && most !== undefined) return `from ${amount(least)} to ${amount(most)}${unit}`;
  const parts: string[] = [];
  if (least !== undefined) parts.push(`of at least ${amount(least)}${unit}`);
  if (node.exclusiveMinimum !== undefined) parts.push(`above ${amount(node.exclusiveMinimum)}${unit}`);
  if (most !== undefined) parts.push(`of at most ${amount(most)}${unit}`);
  if (node.exclusiveMaximum !== undefined) parts.push(`below ${amount(node.exclusiveMaximum)}${unit}`);
  return parts.join(" and ");
}

/** A limit beyond any quantity, such as the safe integers that zod states for whole numbers, is not worth telling. */
const tellable = (limit: number | undefined): number | undefined =>
  limit === undefined || Math.abs(limit) >= 1e12 ? undefined : limit;
const amount = (limit: number): string => limit.toLocaleString("en-US", { maximumSignificantDigits: 15 });

/** What kind of value a node asks for, in a word or three. */
export function kindOf(node: SchemaNode | undefined): string | undefined {
  const names: Readonly<Record<string, string>> = {
    number: "number",
    integer: "whole number",
    string: "text",
    boolean: "true or false",
    array: "list",
    object: "object",
  };
  return node?.type === undefined ? undefined : (names[node.type] ?? node.type);
}

export function withArticle(kind: string | undefined): string {
  if (kind === undefined) return "a value";
  if (kind === "true or false" || kind === "text") return kind;
  return /^[aeiou]/.test(kind) ? `an ${kind}` : `a ${kind}`;
}

/** `Fan flow (flowCfm)`, or the name alone where the schema has no title. */
export function labelOf(path: readonly PropertyKey[], node: SchemaNode | undefined): string {
  const last = path.at(-1);
  if (last === undefined) return "The input";
  const name = typeof last === "number" ? `${String(path.at(-2) ?? "entry")}[${last}]` : String(last);
  return node?.title === undefined ? name : `${node.title} (${name})`;
}

/** A value as it was given, cut where it is long. */
export function shown(value: unknown): string {
  if (typeof value === "number") return String(value);
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

export const quoted = (values: readonly unknown[]): string => values.map((value) => JSON.stringify(value)).join(", ");
export const sentence = (message: string): string => (/[.!?]$/.test(message) ? message : `${message}.`);
