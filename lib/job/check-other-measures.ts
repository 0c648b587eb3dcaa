import type { FieldProblem } from "#lib/errors/input-problem.ts";
import type { OtherMeasure } from "./plan.ts";

/** What the schema alone cannot say of other measures: an efficiency before without one after, a measure of nothing. */
export function checkOtherMeasures(measures: readonly OtherMeasure[] | undefined): FieldProblem[] {
  return (measures ?? []).flatMap((measure, index) => {
    const pointer = `#/plan/otherMeasures/${index}`;
    const halves = (["heating", "cooling"] as const).flatMap((mode): FieldProblem[] => {
      const [before, after] = [`${mode}EfficiencyBeforeRatio`, `${mode}EfficiencyAfterRatio`] as const;
      if ((measure[before] === undefined) === (measure[after] === undefined)) return [];
      const missing = measure[before] === undefined ? before : after;
      return [
        {
          pointer: `${pointer}/${missing}`,
          detail: `“${measure.title}” changes the ${mode} equipment, but one of the two efficiencies is missing`,
          code: "does-not-fit",
          fix: "Enter the efficiency before and after, in the same measure.",
        },
      ];
    });
    return halves;
  });
}
