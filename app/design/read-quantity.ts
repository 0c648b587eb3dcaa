/** A sign, digits with or without thousands commas, decimals; then perhaps a unit, which is letters and signs. */
const QUANTITY = /^([+−–-]?)\s*(\d{1,3}(?:,\d{3})+|\d+)?(\.\d+)?\s*([^\d.,+−–-][^\d,]*\d?)?$/u;

/**
 * The number a person meant, or undefined when that is not sure. Accepts "1,250", " 25 Pa", "24.8Pa", "−5", ".5" and
 * "$420"; refuses "12,5" (a comma is a thousands sign here) and "10-20". An empty text is undefined as well: the caller
 * knows whether an answer is due.
 */
export function readQuantity(text: string): number | undefined {
  const match = QUANTITY.exec(text.trim().replace(/^([+−–-]?)\s*\$/u, "$1"));
  if (!match) return undefined;
  const [, sign = "", whole = "", decimals = ""] = match;
  if (whole === "" && decimals === "") return undefined;
  const size = Number(`${whole.replaceAll(",", "") || "0"}${decimals}`);
  const isNegative = sign !== "" && sign !== "+";
  return isNegative && size !== 0 ? -size : size;
}
