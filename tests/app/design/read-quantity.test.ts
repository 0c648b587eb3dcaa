import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readQuantity } from "#app/design/read-quantity.ts";

describe("reading what a person typed", () => {
  test.each([
    ["1,250", 1250],
    [" 25 Pa", 25],
    ["24.8Pa", 24.8],
    ["1,250.5 cfm", 1250.5],
    ["−5", -5],
    ["-5 °F", -5],
    [".5", 0.5],
    ["$420", 420],
    ["1640 ft²", 1640],
    ["1640 ft2", 1640],
    ["0", 0],
    ["-0", 0],
    ["80 %", 80],
  ])("%j is %d", (text, value) => {
    expect(readQuantity(text)).toBe(value);
  });
  test.each(["", "  ", "Pa", "12,5", "10-20", "1.2.3", "1,25", "12 34", "1e5x9", "twenty"])(
    "%j is not sure, so it is no number",
    (text) => {
      expect(readQuantity(text)).toBeUndefined();
    },
  );
  test("any number with thousands commas comes back as it was", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -9_999_999, max: 9_999_999 }),
        fc.integer({ min: 0, max: 99 }),
        (whole, hundredths) => {
          const value = whole + Math.sign(whole || 1) * (hundredths / 100);
          const text = new Intl.NumberFormat("en-US", { maximumFractionDigits: 2 }).format(value);
          expect(readQuantity(text)).toBeCloseTo(value, 9);
        },
      ),
    );
  });
});
