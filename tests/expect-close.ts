import { expect } from "vitest";

/** A doubled, a halved or a zero answer must fail, so the allowed miss stays well under half of the value. */
const WIDEST_SHARE = 0.4;

/**
 * Asserts that a number is close to a value from an outside source: |actual − expected| ≤ relativeTolerance · |expected|.
 * Refuses a tolerance that 0, a halved or a doubled value would also pass, and a tolerance without a reason.
 * Where the expected value is 0 (or a small difference of large numbers), name the `scale` of the numbers that cancel:
 * the tolerance is then relative to it.
 */
export function expectClose({
  actual,
  expected,
  relativeTolerance,
  reason,
  scale = Math.abs(expected),
}: {
  actual: number;
  expected: number;
  relativeTolerance: number;
  reason: string;
  scale?: number;
}): void {
  if (!(reason.trim().length >= 8)) throw new Error("State why this tolerance is right, in a few words");
  if (!Number.isFinite(expected)) throw new Error(`The expected value must be a finite number, not ${expected}`);
  if (!(scale > 0)) throw new Error("An expected 0 needs the `scale` of the numbers that cancel");
  if (!(relativeTolerance >= 0 && relativeTolerance <= WIDEST_SHARE)) {
    throw new Error(`A relative tolerance of ${relativeTolerance} proves nothing; at most ${WIDEST_SHARE}`);
  }
  const allowed = relativeTolerance * scale;
  if (expected !== 0 && !(allowed <= WIDEST_SHARE * Math.abs(expected))) {
    throw new Error(`±${allowed} would let 0 or a doubled value pass for ${expected}`);
  }
  const miss = Math.abs(actual - expected);
  expect(
    miss <= allowed,
    `${actual} is not within ±${allowed} of ${expected} (off by ${miss}, ${((miss / scale) * 100).toPrecision(3)} %; tolerance: ${reason})`,
  ).toBe(true);
}
