import canonicalize from "canonicalize";
import { isInCanonicalOrder } from "./canonical-order.ts";
import { textHash } from "./sha256.ts";

/**
 * The canonical JSON text of a value: keys sorted, no spaces, numbers as ECMAScript prints them.
 * Source: RFC 8785. @throws Error on values that JSON has no form for (NaN, Infinity, a lone undefined): our bug.
 */
export function canonicalJson(value: unknown): string {
  const text = isInCanonicalOrder(value) ? JSON.stringify(value) : canonicalize(value);
  if (text === undefined) throw new Error("This value has no JSON form");
  return text;
}

/** SHA-256 (FIPS 180-4) of the canonical JSON text in UTF-8, as 64 hexadecimal digits: equal content, equal hash. */
export function contentHash(value: unknown): string {
  return textHash(canonicalJson(value));
}
