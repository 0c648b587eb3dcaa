/** A job while it is being entered: JSON of any completeness, changed by path ("systems/0/heating/kind"). */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };
export type Draft = { readonly [key: string]: Json };

const keysOf = (path: string): string[] => path.split("/");
const isRecord = (value: Json | undefined): value is Draft =>
  typeof value === "object" && value !== null && !Array.isArray(value);

export function readAt(draft: Json, path: string): Json | undefined {
  let value: Json | undefined = draft;
  for (const key of keysOf(path)) value = childOf(value, key);
  return value;
}

function childOf(value: Json | undefined, key: string): Json | undefined {
  if (Array.isArray(value)) return value[Number(key)];
  return isRecord(value) ? value[key] : undefined;
}

/** The draft with one value changed. `undefined` leaves the field out; an object that it empties goes with it. */
export function writeAt(draft: Draft, path: string, value: Json | undefined): Draft {
  return (write(draft, keysOf(path), value) as Draft | undefined) ?? {};
}

function write(node: Json | undefined, keys: readonly string[], value: Json | undefined): Json | undefined {
  const [key, ...rest] = keys;
  if (key === undefined) return value;
  if (Array.isArray(node)) {
    return node.flatMap((item: Json, index) => {
      if (index !== Number(key)) return [item];
      const changed = write(item, rest, value);
      // An entry of a list stays, even empty: only its removal takes it away.
      return changed === undefined ? (rest.length > 0 ? [{}] : []) : [changed];
    });
  }
  const record = isRecord(node) ? node : {};
  const { [key]: child, ...others } = record;
  const changed = write(child, rest, value);
  if (changed !== undefined) return { ...record, [key]: changed };
  return Object.keys(others).length > 0 ? others : undefined;
}

/** The entries of a list; none where the list is not there yet. */
export function listAt(draft: Draft, path: string): readonly Draft[] {
  const value = readAt(draft, path);
  return Array.isArray(value) ? (value as readonly Draft[]) : [];
}

export function textAt(draft: Json, path: string): string | undefined {
  const value = readAt(draft, path);
  return typeof value === "string" ? value : undefined;
}

export function numberAt(draft: Json, path: string): number | undefined {
  const value = readAt(draft, path);
  return typeof value === "number" ? value : undefined;
}

/** An id that no entry of the list has yet: "leak-4". */
export function newId(list: readonly Draft[], word: string): string {
  const taken = new Set(list.map((entry) => entry.id));
  for (let number = list.length + 1; ; number += 1) {
    const id = `${word}-${number}`;
    if (!taken.has(id)) return id;
  }
}
