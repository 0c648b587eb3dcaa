import type { Cents } from "#lib/units/quantity.ts";

/** A decimal number held exactly: digits × 10^−places. */
interface Decimal {
  digits: bigint;
  places: number;
}

/** A price book says the same rates and prices for every leak. */
const read = new Map<number, Decimal>();
const MOST_KEPT = 2000;

function decimalOf(value: number): Decimal {
  const kept = read.get(value);
  if (kept) return kept;
  const decimal = readDecimal(value);
  if (read.size >= MOST_KEPT) read.clear();
  read.set(value, decimal);
  return decimal;
}

/** The decimal that a number is written as, digit for digit: 0.07 is 7/100 here, whatever binary makes of it. */
function readDecimal(value: number): Decimal {
  if (Number.isSafeInteger(value)) return { digits: BigInt(value), places: 0 };
  if (!Number.isFinite(value)) throw new RangeError(`Money needs finite numbers, not ${value}`);
  const [mantissa = "0", exponent = "0"] = String(value).split("e");
  const [whole = "0", fraction = ""] = mantissa.split(".");
  const places = fraction.length - Number(exponent);
  const digits = BigInt(whole + fraction);
  return places >= 0 ? { digits, places } : { digits: digits * 10n ** BigInt(-places), places: 0 };
}

function sumOfDecimals(values: readonly number[]): Decimal {
  const decimals = values.map(decimalOf);
  const places = Math.max(0, ...decimals.map((decimal) => decimal.places));
  const digits = decimals.reduce((sum, decimal) => sum + decimal.digits * 10n ** BigInt(places - decimal.places), 0n);
  return { digits, places };
}

function productOf(factors: readonly Decimal[]): Decimal {
  return factors.reduce(
    (product, { digits, places }) => ({ digits: product.digits * digits, places: product.places + places }),
    { digits: 1n, places: 0 },
  );
}

/**
 * Whole cents of an exact quotient, rounded half up once.
 * cents = ⌊Π factors ÷ Π divisors + ½⌋; a factor or divisor may be a sum, as in 1 + overhead. No binary fraction ever
 * enters, so a half cent is a half cent. Valid for amounts of 0 and more. Source: own-method (the price book's rule).
 * @throws RangeError on a negative or endless amount or a divisor of 0: a fault of ours, the schema rules them out.
 */
export function roundedCents({
  factors,
  divisors = [],
}: {
  factors: readonly (number | readonly number[])[];
  divisors?: readonly (number | readonly number[])[];
}): Cents {
  const exact = (parts: readonly (number | readonly number[])[]) =>
    productOf(parts.map((part) => (typeof part === "number" ? decimalOf(part) : sumOfDecimals(part))));
  const over = exact(factors);
  const under = exact(divisors);
  if (over.digits < 0n || under.digits <= 0n) throw new RangeError("An amount of money cannot be negative");
  const numerator = over.digits * 10n ** BigInt(under.places);
  const denominator = under.digits * 10n ** BigInt(over.places);
  return Number((2n * numerator + denominator) / (2n * denominator));
}
