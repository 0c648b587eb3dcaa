import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fieldNumberOf, shownFromStored, shownUnitOf, storedFromTyped } from "#lib/units/display-unit.ts";
import { UNIT_BY_SUFFIX } from "#lib/units/unit-names.ts";

const UNITS = [...new Set<string>(Object.values(UNIT_BY_SUFFIX)), "cfm/Pa^n", "million Btu", "cfm at 25 Pa"];

/** A decimal number of up to eight digits, as people type: 0.163, 1640, -12.5. */
const typed = fc
  .tuple(fc.integer({ min: -99_999_999, max: 99_999_999 }), fc.integer({ min: 0, max: 5 }))
  .map(([digits, decimals]) => Number(`${digits}e-${decimals}`));

describe("exact definitions, NIST Special Publication 811 appendix B.8 as remembered, to the digits printed there", () => {
  test.each([
    ["cfm", 1000, 471.9474],
    ["ft²", 1000, 92.90304],
    ["°F", 68, 20],
    ["°F", -40, -40],
    ["Δ°F", 9, 5],
    ["in", 1, 25.4],
    ["Btu/h", 10_000, 2.930711],
    ["therm", 1, 29.30711],
    ["gal", 1, 3.785412],
    ["h·ft²·°F/Btu", 1, 0.1761102],
    ["Btu/(h·ft²·°F)", 1, 5.678263],
    ["inHg", 1, 3.386389],
    ["lb/ft³", 1, 16.01846],
    ["mi", 1, 1.609344],
  ])("%s: %s is shown as %s", (unit, value, shown) => {
    const actual = shownFromStored({ value, unit, system: "si" });
    expect(Math.abs(actual / shown - 1)).toBeLessThan(5e-7);
  });
});

test.each(UNITS)("%s: entered in US units, typed anew in SI as shown, it comes back digit for digit", (unit) => {
  fc.assert(
    fc.property(typed, (value) => {
      const shown = fieldNumberOf({ value, unit, system: "si" });
      expect(storedFromTyped({ value: shown, unit, system: "si" }) - value).toBe(0);
    }),
  );
});

test.each(UNITS)("%s: what is typed in SI is shown as typed", (unit) => {
  fc.assert(
    fc.property(typed, (value) => {
      const stored = storedFromTyped({ value, unit, system: "si" });
      expect(fieldNumberOf({ value: stored, unit, system: "si" }) - value).toBe(0);
    }),
  );
});

test("US units change nothing, and pascals, watts and money stay in SI", () => {
  for (const unit of UNITS) expect(shownFromStored({ value: 12.5, unit, system: "us" })).toBe(12.5);
  for (const unit of ["Pa", "W", "kWh", "USD", "share"]) expect(shownUnitOf({ unit, system: "si" })).toBe(unit);
  expect(UNITS.filter((unit) => shownUnitOf({ unit, system: "si" }) !== unit).length).toBeGreaterThan(20);
});
