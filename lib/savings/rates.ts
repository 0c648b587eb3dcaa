import { refuse } from "#lib/errors/input-problem.ts";
import type { Dollars } from "#lib/units/quantity.ts";

/** What a unit of energy costs: kWh, therm or gallon, as the caller counts. Fixed charges are never part of it. */
export type EnergyRate =
  | { kind: "flat"; usdPerUnit: number }
  /** By use within a month; the last step has no upper end. */
  | { kind: "tiered"; steps: readonly { upToUnits: number | null; usdPerUnit: number }[] }
  /** By 8-hour shift: hours 1 to 8, 9 to 16, 17 to 24; one row for the whole year, or one a month. */
  | { kind: "time-of-use"; usdPerUnitByShift: readonly (readonly [number, number, number])[] };

/** Use by month (January first) and, where a rate asks for it, by 8-hour shift. */
export type MonthlyUse = readonly (readonly [number, number, number])[];

/**
 * Money saved in a year when the use of the house falls: the bill before less the bill after.
 * flat Σ p·saved; tiered: each month's steps, from the top down; time of use: each shift at its own price.
 * Fixed charges are the same before and after and never counted. Source: derived. Left out: demand charges, taxes.
 * `before` and `after` are the whole house's use of that fuel, so that the steps are met where they are.
 * @throws InputProblem when there are not twelve months, or the rate is not usable.
 */
export function moneySaved({ rate, before, after }: { rate: EnergyRate; before: MonthlyUse; after: MonthlyUse }): {
  savedUsd: Dollars;
} {
  return { savedUsd: energyCharge({ rate, use: before }).chargeUsd - energyCharge({ rate, use: after }).chargeUsd };
}

/** What a year's use costs at a rate, fixed charges left out. @throws InputProblem as `moneySaved`. */
export function energyCharge({ rate, use }: { rate: EnergyRate; use: MonthlyUse }): { chargeUsd: Dollars } {
  if (use.length !== 12 || !use.flat().every((each) => each >= 0 && Number.isFinite(each))) {
    refuse({
      field: "use",
      detail: "The use must be twelve months of three shifts, none below zero",
      fix: "Give the use of each month, January first, by 8-hour shift.",
    });
  }
  checkRate(rate);
  const chargeUsd = use.reduce((sum, [one, two, three], month) => sum + monthlyCharge(rate, month, one, two, three), 0);
  return { chargeUsd };
}

/**
 * What one month (0 to 11) costs for the use of its three shifts; a rate without shifts only knows their sum.
 * Unguarded, allocates nothing: for use in draws, with a rate that `checkRate` has let through.
 */
export function monthlyCharge(rate: EnergyRate, month: number, night: number, day: number, evening: number): Dollars {
  const units = night + day + evening;
  switch (rate.kind) {
    case "flat":
      return units * rate.usdPerUnit;
    case "tiered": {
      let charge = 0;
      let from = 0;
      for (const { upToUnits, usdPerUnit } of rate.steps) {
        const to = upToUnits ?? Number.POSITIVE_INFINITY;
        charge += Math.max(0, Math.min(units, to) - from) * usdPerUnit;
        from = to;
      }
      return charge;
    }
    case "time-of-use": {
      const prices = rate.usdPerUnitByShift[rate.usdPerUnitByShift.length === 1 ? 0 : month]!;
      return night * prices[0] + day * prices[1] + evening * prices[2];
    }
  }
}

function checkRate(rate: EnergyRate): void {
  const fix = "Enter prices above zero in dollars a unit, without fixed charges.";
  const isPrice = (price: number) => price > 0 && price < 100;
  const prices =
    rate.kind === "flat"
      ? [rate.usdPerUnit]
      : rate.kind === "tiered"
        ? rate.steps.map((step) => step.usdPerUnit)
        : rate.usdPerUnitByShift.flat();
  if (!(prices.length > 0 && prices.every(isPrice))) {
    refuse({ field: "rate", detail: "Each price must be above 0 and below 100 USD a unit", fix });
  }
  if (rate.kind === "tiered") {
    const ends = rate.steps.map((step) => step.upToUnits ?? Number.POSITIVE_INFINITY);
    const ascends = ends.every((end, index) => end > (ends[index - 1] ?? 0));
    if (!(ascends && ends.at(-1) === Number.POSITIVE_INFINITY)) {
      refuse({
        field: "rate/steps",
        detail: "The steps of a rate must rise, and the last must have no upper end",
        fix: "Give each step the units it ends at, and null for the last.",
      });
    }
  }
  if (rate.kind === "time-of-use" && ![1, 12].includes(rate.usdPerUnitByShift.length)) {
    refuse({
      field: "rate/usdPerUnitByShift",
      detail: `A time-of-use rate must have 1 row or 12, not ${rate.usdPerUnitByShift.length}`,
      fix: "Give one row for the year, or one for each month.",
    });
  }
}
