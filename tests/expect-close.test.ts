import { describe, expect, it } from "vitest";
import { expectClose } from "./expect-close.ts";

const reason = "planted case for the assertion itself";

describe("expectClose", () => {
  it("passes within the tolerance and fails outside it, on both sides", () => {
    expectClose({ actual: 100.9, expected: 100, relativeTolerance: 0.01, reason });
    expect(() => expectClose({ actual: 101.1, expected: 100, relativeTolerance: 0.01, reason })).toThrow("not within");
    expect(() => expectClose({ actual: 98.9, expected: 100, relativeTolerance: 0.01, reason })).toThrow("not within");
    expectClose({ actual: -100.9, expected: -100, relativeTolerance: 0.01, reason });
  });

  it("fails on NaN and on infinity", () => {
    for (const actual of [Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => expectClose({ actual, expected: 1, relativeTolerance: 0.1, reason })).toThrow("not within");
    }
  });

  it("refuses a tolerance that 0, half or twice the value would pass, even when the value is right", () => {
    for (const relativeTolerance of [0.5, 1, 2, Number.NaN]) {
      expect(() => expectClose({ actual: 5, expected: 5, relativeTolerance, reason })).toThrow("proves nothing");
    }
    expect(() => expectClose({ actual: 5, expected: 5, relativeTolerance: 0.1, scale: 100, reason })).toThrow(
      "would let 0 or a doubled value pass",
    );
  });

  it("asks for a scale where the expected value is 0", () => {
    expect(() => expectClose({ actual: 0, expected: 0, relativeTolerance: 1e-9, reason })).toThrow("scale");
    expectClose({ actual: 1e-8, expected: 0, relativeTolerance: 1e-9, scale: 100, reason });
    expect(() => expectClose({ actual: 1e-6, expected: 0, relativeTolerance: 1e-9, scale: 100, reason })).toThrow();
  });

  it("refuses a tolerance without a reason", () => {
    expect(() => expectClose({ actual: 1, expected: 1, relativeTolerance: 0.01, reason: "" })).toThrow("State why");
  });
});
