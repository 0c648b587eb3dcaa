import { describe, expect, it } from "vitest";
import { savingFromBills } from "#lib/loads/saving-from-bills.ts";
import { createDrawSource } from "#lib/numeric/create-draw-source.ts";
import { expectClose } from "#tests/expect-close.ts";
import { billsOf, household, LEAKY, SAVED, SEALED, study, temperaturesOf } from "./billed-household.ts";

describe("saving from bills", () => {
  it("recovers the saving exactly when the later year was 4 °F colder and nothing scatters", () => {
    const after = billsOf({ year: 2025, truth: SEALED, shiftF: () => -4 });
    const before = billsOf({ year: 2023, truth: LEAKY });
    const raw = before.reduce((sum, { use }) => sum + use, 0) - after.reduce((sum, { use }) => sum + use, 0);
    expect(raw).toBeLessThan(0.4 * SAVED);
    const { saved, cannotTell, hasOtherChange } = savingFromBills({ before, after, temperaturesOf });
    expectClose({ actual: saved!.value, expected: SAVED, relativeTolerance: 1e-5, reason: "bills without scatter" });
    expect(cannotTell).toBeNull();
    expect(hasOtherChange).toBe(false);
  });

  it("covers the truth about as often as the range claims, 8 in 10, and is not biased", () => {
    const told = study({ truth: SEALED, seed: 7, pairs: 60 }).filter(({ saved }) => saved !== null);
    expect(told.length).toBeGreaterThan(54);
    const covered = told.filter(({ saved }) => saved!.p10 <= SAVED && SAVED <= saved!.p90).length / told.length;
    expect(covered).toBeGreaterThan(0.68);
    expect(covered).toBeLessThan(0.92);
    const mean = told.reduce((sum, { saved }) => sum + saved!.value, 0) / told.length;
    expectClose({ actual: mean, expected: SAVED, relativeTolerance: 0.12, reason: "60 pairs of years" });
    const real = Math.sqrt(told.reduce((sum, { saved }) => sum + (saved!.value - mean) ** 2, 0) / told.length);
    const stated = told.reduce((sum, { saved }) => sum + saved!.standardUncertainty, 0) / told.length;
    expect(real / stated).toBeGreaterThan(0.75);
    expect(real / stated).toBeLessThan(1.25);
  });

  it("cannot tell where nothing was saved, but for the few that chance makes", () => {
    const all = study({ truth: LEAKY, seed: 8, pairs: 40 });
    const told = all.filter(({ cannotTell }) => cannotTell === null).length / all.length;
    expect(told).toBeLessThan(0.15);
    // Could not fail otherwise: with the saving in, most are told.
    const withSaving = study({ truth: SEALED, seed: 8, pairs: 40 });
    expect(withSaving.filter(({ cannotTell }) => cannotTell === null).length / withSaving.length).toBeGreaterThan(0.6);
  });

  it("doubts the weather of years whose bills do not tell it, and so cannot tell a saving of a tenth", () => {
    const before = billsOf({ year: 2023, truth: LEAKY, tellsWeather: false });
    const after = billsOf({ year: 2025, truth: SEALED, tellsWeather: false });
    const { saved, cannotTell, fractionalUncertainty } = savingFromBills({ before, after, temperaturesOf });
    expectClose({ actual: saved!.value, expected: SAVED, relativeTolerance: 1e-5, reason: "typical years both" });
    expect(cannotTell).toEqual({ code: "within-uncertainty" });
    // By hand: √2 × 8 % of about 730 therms of heating over about 120 saved.
    expect(fractionalUncertainty!).toBeGreaterThan(0.5);
  });

  it("says which side lacks a year of bills, or does not follow the weather", () => {
    const before = billsOf({ year: 2023, truth: LEAKY });
    const after = billsOf({ year: 2025, truth: SEALED });
    expect(savingFromBills({ before, after: after.slice(0, 6), temperaturesOf })).toMatchObject({
      saved: null,
      cannotTell: { code: "too-few-bills", side: "after", days: 181 },
    });
    expect(savingFromBills({ before: [], after, temperaturesOf }).cannotTell).toMatchObject({
      side: "before",
      days: 0,
    });
    const uniforms = new Float64Array(12);
    createDrawSource(3).fillUniforms(0, uniforms);
    const wild = after.map((bill, month) => ({ ...bill, use: 200 * uniforms[month]! }));
    expect(savingFromBills({ before, after: wild, temperaturesOf }).cannotTell).toMatchObject({
      code: "poor-fit",
      side: "after",
    });
  });

  it("points at a change that ducts do not explain", () => {
    const after = billsOf({ year: 2025, truth: household({ heatingPerF: 0.1, basePerDay: 1.3 }) });
    expect(savingFromBills({ before: billsOf({ year: 2023, truth: LEAKY }), after, temperaturesOf })).toMatchObject({
      hasOtherChange: true,
    });
  });
});
