/** JSON Pointer (RFC 6901) as a URI fragment: `["points", 0, "a/b"]` → `#/points/0/a~1b`. */
export function pointerOf(path: readonly PropertyKey[]): string {
  return `#${path.map((key) => `/${String(key).replaceAll("~", "~0").replaceAll("/", "~1")}`).join("")}`;
}

/** The value at a path of an input of any form; undefined where the path leads nowhere. */
export function valueAt(input: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce((value, key) => (value as Record<PropertyKey, unknown> | null | undefined)?.[key], input);
}
