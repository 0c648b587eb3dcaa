import { textHash } from "#lib/hash/sha256.ts";

/**
 * The same premise gives the same key however it was typed: upper or lower case, dots, commas and spaces do not count.
 * Only the first five digits of the ZIP code do.
 */
export function premiseKey({ addressLine, zip }: { addressLine: string; zip: string }): string {
  const plain = addressLine
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, " ")
    .trim();
  return textHash(`${plain}|${zip.slice(0, 5)}`);
}
