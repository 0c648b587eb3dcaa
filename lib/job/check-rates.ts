import type { FieldProblem } from "#lib/errors/input-problem.ts";
import type { Rates } from "./rates.ts";

function checkSteps(ends: readonly (number | undefined)[], path: string, endKey: string): FieldProblem[] {
  return ends.flatMap((end, index): FieldProblem[] => {
    const pointer = `#/rates/${path}/${index}/${endKey}`;
    const isLast = index === ends.length - 1;
    if (isLast && end !== undefined)
      return [
        {
          pointer,
          detail: `The last step of the price ends at ${end}, so use above it has no price`,
          code: "does-not-fit",
          fix: "Leave the end of the last step out.",
        },
      ];
    if (!isLast && !(end !== undefined && end > (ends[index - 1] ?? 0)))
      return [
        {
          pointer,
          detail: "The steps of a price must rise, and each but the last must say where it ends",
          code: "does-not-fit",
          fix: "Enter the use a month at which this step ends, above the end of the step before.",
        },
      ];
    return [];
  });
}

/** What the schema alone cannot say of prices: steps that do not rise, two kinds of price for one fuel. */
export function checkRates(rates: Rates | undefined): FieldProblem[] {
  if (!rates) return [];
  const electricity = (["electricityUsdPerKWh", "electricityTiers", "electricityByShift"] as const).filter((key) =>
    isGiven(rates[key]),
  );
  const gas = (["naturalGasUsdPerTherm", "naturalGasTiers"] as const).filter((key) => isGiven(rates[key]));
  return [
    ...[electricity, gas]
      .filter((kinds) => kinds.length > 1)
      .map((kinds) => ({
        pointer: `#/rates/${kinds[1]}`,
        detail: "Two prices stand for one fuel",
        code: "does-not-fit",
        fix: "Keep one: a flat price, steps of use, or prices by time of day.",
      })),
    ...checkSteps(
      (rates.electricityTiers ?? []).map(({ upToKWh }) => upToKWh),
      "electricityTiers",
      "upToKWh",
    ),
    ...checkSteps(
      (rates.naturalGasTiers ?? []).map(({ upToTherms }) => upToTherms),
      "naturalGasTiers",
      "upToTherms",
    ),
  ];
}

const isGiven = (value: unknown): boolean => (Array.isArray(value) ? value.length > 0 : value !== undefined);
