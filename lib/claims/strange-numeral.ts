/** A string is passed over whole, so that digits in it are not taken for a number. */
const STRING_OR_NUMERAL = /"(?:[^"\\]|\\.)*"|-?\d[\d.eE+-]*/g;
const NUMERAL = /^(-?)(\d+)(?:\.(\d+))?(?:[eE]([+-]?\d+))?$/;

/** The decimal number that a numeral writes, in one form: 1.50, 15e-1 and 1.5 are one number. */
function decimalOf(numeral: string): string {
  const [, sign = "", whole = "", fraction = "", exponent = "0"] = NUMERAL.exec(numeral) ?? [];
  const digits = (whole + fraction).replace(/^0+/, "");
  const plain = digits.replace(/0+$/, "");
  if (plain === "") return "0";
  return `${sign}${plain}e${Number(exponent) - fraction.length + digits.length - plain.length}`;
}

/**
 * The first numeral of a JSON text that reads as a number but is not that number's own shortest one, or undefined. Two
 * texts may read as the same double and differ in a seventeenth digit; whoever issues a packet writes the shortest
 * (RFC 8785 §3.2.2.3), so such a text was changed. Another way to write the same decimal is no change.
 */
export function strangeNumeral(text: string): string | undefined {
  for (const [token] of text.matchAll(STRING_OR_NUMERAL))
    if (!token.startsWith('"') && decimalOf(token) !== decimalOf(String(Number(token)))) return token;
  return undefined;
}
