import { expect, test } from "vitest";
import { readInUnits } from "#app/units/read-in-units.ts";

// 1 cfm is 0.4719474432 L/s, 1 ft² 0.09290304 m², 50 °F is 10 °C: exact definitions.
test.each([
  ["150", "cfm", "us", 150],
  ["150 L/s", "cfm", "us", 150 / 0.4719474432],
  ["150", "cfm", "si", 150 / 0.4719474432],
  ["150 cfm", "cfm", "si", 150],
  ["1,640 ft2", "ft²", "si", 1640],
  ["1,640 ft²", "ft²", "us", 1640],
  ["100 m2", "ft²", "us", 100 / 0.09290304],
  ["10 C", "°F", "us", 50],
  ["50 °F", "°F", "si", 50],
  ["12 widgets", "cfm", "us", 12],
] as const)("%s where %s is stored and %s is read", (typed, unit, system, stored) => {
  expect(readInUnits(typed, { unit, system })).toBeCloseTo(stored, 6);
});

test("what is no number is nothing", () => {
  expect(readInUnits("about a hundred cfm", { unit: "cfm", system: "us" })).toBeUndefined();
});
