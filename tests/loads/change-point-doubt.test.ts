import { describe, expect, it } from "vitest";
import { changePointDoubt } from "#lib/loads/change-point-doubt.ts";
import { fitChangePoint, seasonalUse } from "#lib/loads/change-point-fit.ts";
import type { ChangePointModel } from "#lib/loads/change-point-model.ts";
import { expectClose } from "#tests/expect-close.ts";
import cases from "#tests/reference/ashrae-guideline-14/cases.json" with { type: "json" };

/** Normal numbers from a fixed sequence, so the same each time. */
function normals(): () => number {
  let state = 1;
  const uniform = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

describe("the jackknife of a season's use", () => {
  it.each(cases.filter((each) => each.model !== "both").map((each) => [each.title, each] as const))(
    "derived: its usual value is the scatter of a hundred houses alike, %s",
    (_, { periods, model: name }) => {
      const model = name as ChangePointModel;
      const fit = fitChangePoint({ periods, model });
      const days = periods.reduce((sum, period) => sum + period.days, 0);
      const scatterPerDay = (fit.cvRmse * periods.reduce((sum, period) => sum + period.use, 0)) / days;
      const normal = normals();
      const trials = Array.from({ length: 100 }, () => {
        const alike = periods.map((period) => {
          const { heatingUse, coolingUse } = seasonalUse([period], fit);
          const use =
            fit.baseUsePerDay * period.days + heatingUse + coolingUse + normal() * scatterPerDay * period.days;
          return { ...period, use: Math.max(0, use) };
        });
        const refit = fitChangePoint({ periods: alike, model });
        const doubt = changePointDoubt({ periods: alike, model, fit: refit });
        return model === "heating"
          ? { use: refit.heatingUse, doubt: doubt.relativeUncertaintyOfHeatingUse! }
          : { use: refit.coolingUse, doubt: doubt.relativeUncertaintyOfCoolingUse! };
      });
      const mean = trials.reduce((sum, each) => sum + each.use, 0) / trials.length;
      const spread = Math.sqrt(trials.reduce((sum, each) => sum + (each.use - mean) ** 2, 0) / trials.length) / mean;
      const usual = trials.map((each) => each.doubt).sort((a, b) => a - b)[trials.length / 2]!;
      expect(spread).toBeGreaterThan(0.005);
      expectClose({
        actual: usual,
        expected: spread,
        relativeTolerance: 0.35,
        reason: "a jackknife of twelve bills, a hundred trials",
      });
    },
  );
});
