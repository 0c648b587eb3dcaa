/**
 * A copy of a document with one value at a JSON Pointer, for asking "what if this were so". Objects on the way that are
 * not there yet are made; the document itself stays as it is.
 */
export function withValueAt(document: object, pointer: string, value: unknown): unknown {
  return put(document, keysOf(pointer), value);
}

const keysOf = (pointer: string): string[] =>
  pointer
    .replace(/^#\//, "")
    .split("/")
    .map((key) => key.replaceAll("~1", "/").replaceAll("~0", "~"));

function put(node: unknown, [key, ...rest]: readonly string[], value: unknown): unknown {
  if (key === undefined) return value;
  if (Array.isArray(node)) return node.map((item, index) => (String(index) === key ? put(item, rest, value) : item));
  const record = (typeof node === "object" && node !== null ? node : {}) as Readonly<Record<string, unknown>>;
  return { ...record, [key]: put(record[key], rest, value) };
}
