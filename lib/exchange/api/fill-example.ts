/** The document that examples name instead of repeating it, and the example job that it is. */
export const EXAMPLE_JOB = { name: "job:inside-ducts-furnace", file: "lib/examples/inside-ducts-furnace.json" };

const NAME = /^\{([\w:-]+)\}$/;

/**
 * An example with everything in its braces put in its place: documents and ids, by the names in `known`.
 * Undefined where something stays unknown.
 */
export function fillExample(example: unknown, known: Readonly<Record<string, unknown>>): unknown {
  let isWhole = true;
  const fill = (value: unknown): unknown => {
    if (typeof value === "string") {
      const name = NAME.exec(value)?.[1];
      if (name === undefined) return value;
      if (Object.hasOwn(known, name)) return known[name];
      isWhole = false;
      return value;
    }
    if (Array.isArray(value)) return value.map(fill);
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, fill(each)]));
  };
  const filled = fill(example);
  return isWhole ? filled : undefined;
}
