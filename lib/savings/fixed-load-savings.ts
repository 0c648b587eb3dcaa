import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { Hours, KilowattHours, Quantity, Ratio } from "#lib/units/quantity.ts";

/**
 * Energy saved when the rooms ask for the same heat or cold and the ducts bring more of it.
 * saved = E (1 − η_before/η_after), in the unit of E. Valid for equipment whose own efficiency does not change with its
 * load (not for heat pumps: those go bin by bin). Never more than E; negative where the ducts bring less.
 * Source: derived. Left out: that a house may be kept warmer afterwards.
 * @throws InputProblem when a value is outside its range.
 */
export function fixedLoadSavings({
  energyBefore,
  efficiencyBefore,
  efficiencyAfter,
}: {
  energyBefore: number;
  efficiencyBefore: Ratio;
  efficiencyAfter: Ratio;
}): { energySaved: number } {
  requireBetween({ field: "energyBefore", label: "Energy before", value: energyBefore, low: 0, high: 1e12 });
  requireAbove({ field: "efficiencyBefore", label: "Distribution efficiency before", value: efficiencyBefore });
  requireAbove({ field: "efficiencyAfter", label: "Distribution efficiency after", value: efficiencyAfter });
  return { energySaved: energyBefore * (1 - efficiencyBefore / efficiencyAfter) };
}

/**
 * Blower energy saved: power by run time before, less after. It may be negative: a blower against tighter ducts can
 * draw more while it runs shorter.
 * saved = (P_b·t_b − P_a·t_a)/1,000. Source: derived.
 * @throws InputProblem when a value is outside its range.
 */
export function blowerSavings({
  powerBeforeW,
  powerAfterW,
  runBeforeHours,
  runAfterHours,
}: {
  powerBeforeW: Quantity<"W">;
  powerAfterW: Quantity<"W">;
  runBeforeHours: Hours;
  runAfterHours: Hours;
}): { savedKWh: KilowattHours } {
  for (const [field, value] of Object.entries({ powerBeforeW, powerAfterW })) {
    requireBetween({ field, label: "Blower power", value, unit: "W", low: 0, high: 5000 });
  }
  for (const [field, value] of Object.entries({ runBeforeHours, runAfterHours })) {
    requireBetween({ field, label: "Run time", value, unit: "h", low: 0, high: 8784 });
  }
  return { savedKWh: (powerBeforeW * runBeforeHours - powerAfterW * runAfterHours) / 1000 };
}
