import type { Draft, Json } from "./draft.ts";

/** Where two states of a job differ, by path; a value that came or went counts as one difference. */
export function changedPaths(before: Draft, after: Draft): string[] {
  const changed: string[] = [];
  visit(before, after, "", changed);
  return changed;
}

function visit(before: Json | undefined, after: Json | undefined, path: string, changed: string[]): void {
  if (Object.is(before, after)) return;
  const [one, other] = [entriesOf(before), entriesOf(after)];
  if (!one || !other || Array.isArray(before) !== Array.isArray(after)) {
    changed.push(path);
    return;
  }
  for (const key of new Set([...one.keys(), ...other.keys()])) {
    visit(one.get(key), other.get(key), path === "" ? key : `${path}/${key}`, changed);
  }
}

/** The parts of an object or a list by their keys; undefined for a single value. */
function entriesOf(value: Json | undefined): Map<string, Json> | undefined {
  return typeof value === "object" && value !== null ? new Map(Object.entries(value)) : undefined;
}
