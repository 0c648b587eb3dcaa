import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { promiseParts } from "#lib/retest/promise-parts.ts";

const cfm = fc.double({ min: 1, max: 2000, noNaN: true });
const usd = fc.double({ min: -500, max: 5000, noNaN: true });

describe("why a verified saving differs from the promised one", () => {
  it("splits by hand: 200 cfm and $300 promised, 150 cfm and $210 verified", () => {
    // $1.50 a cfm was promised; 50 cfm fewer are $75; what is left of the $90 is due to the places.
    expect(
      promiseParts({
        promisedRemovedCfm25: 200,
        verifiedRemovedCfm25: 150,
        promisedUsdPerYear: 300,
        verifiedUsdPerYear: 210,
      }),
    ).toEqual({ howMuchUsdPerYear: -75, whereUsdPerYear: -15 });
  });
  it("adds up to the whole difference, and has no part for what did not change", () => {
    fc.assert(
      fc.property(cfm, cfm, usd, usd, (promised, verified, promisedUsd, verifiedUsd) => {
        const values = {
          promisedRemovedCfm25: promised,
          verifiedRemovedCfm25: verified,
          promisedUsdPerYear: promisedUsd,
          verifiedUsdPerYear: verifiedUsd,
        };
        const parts = promiseParts(values)!;
        expect(parts.howMuchUsdPerYear + parts.whereUsdPerYear).toBeCloseTo(verifiedUsd - promisedUsd, 6);
        expect(promiseParts({ ...values, verifiedRemovedCfm25: promised })!.howMuchUsdPerYear).toBeCloseTo(0, 9);
        // Every cfm worth what was promised: nothing is due to the places.
        const inProportion = promiseParts({ ...values, verifiedUsdPerYear: (promisedUsd / promised) * verified })!;
        expect(inProportion.whereUsdPerYear).toBeCloseTo(0, 6);
      }),
    );
  });
  it("says nothing where nothing was promised, and refuses what is no number", () => {
    const none = { promisedRemovedCfm25: 0, verifiedRemovedCfm25: 5, promisedUsdPerYear: 0, verifiedUsdPerYear: 3 };
    expect(promiseParts(none)).toBeNull();
    expect(() => promiseParts({ ...none, verifiedUsdPerYear: Number.NaN })).toThrow();
  });
});
