import type { DeemedPart } from "#lib/job/result/plan-result.ts";
import type { DeemedSavings } from "#lib/savings/deemed-leakage-savings.ts";
import { BTU_PER_KWH, BTU_PER_THERM, WATTS_PER_KILOWATT } from "#lib/units/conversions.ts";
import type { HouseState } from "../kernel/house-state.ts";
import type { AssembleInput } from "./assemble-result.ts";

/** What a rule says, split as its own formula is: a share of a use. */
export interface RuleTerms {
  savings: DeemedSavings;
  coolingShare: number;
  heatingShare: number;
}

/** Yearly use that sealing can lower: gas for heating, electricity for cooling, electricity of the blowers. */
interface Uses {
  heatingTherms: number;
  coolingKWh: number;
  blowerKWh: number;
}

function usesOf({ house }: AssembleInput, state: HouseState): Uses {
  const uses = { heatingTherms: 0, coolingKWh: 0, blowerKWh: 0 };
  const sum = (values: Float64Array) => values.reduce((total, each) => total + each, 0);
  house.systems.forEach(({ heating }, s) => {
    const { modes, blowerPowerW } = state.systems[s]!;
    if (modes.heating) {
      if (heating?.fuel === "naturalGas") uses.heatingTherms += sum(modes.heating.inputBtuBySlot) / BTU_PER_THERM;
      uses.blowerKWh += (sum(modes.heating.runHoursBySlot) * blowerPowerW) / WATTS_PER_KILOWATT;
    }
    if (modes.cooling) {
      uses.coolingKWh += sum(modes.cooling.inputBtuBySlot) / BTU_PER_KWH;
      uses.blowerKWh += (sum(modes.cooling.runHoursBySlot) * blowerPowerW) / WATTS_PER_KILOWATT;
    }
  });
  return uses;
}

const less = (one: Uses, other: Uses): Uses => ({
  heatingTherms: one.heatingTherms - other.heatingTherms,
  coolingKWh: one.coolingKWh - other.coolingKWh,
  blowerKWh: one.blowerKWh - other.blowerKWh,
});

/** Share of the blowers' air that the work keeps in the ducts, a return leak counted half, as such rules do. */
function shareKept({ kernel }: AssembleInput): number {
  let kept = 0;
  let flow = 0;
  kernel.before.systems.forEach(({ leaks, fanFlowCfm }, s) => {
    const after = kernel.after.systems[s]!.leaks;
    kept += leaks.supplyOutsideCfm - after.supplyOutsideCfm + (leaks.returnOutsideCfm - after.returnOutsideCfm) / 2;
    flow += fanFlowCfm;
  });
  return flow > 0 ? kept / flow : 0;
}

/**
 * Why the estimate and a program's rule differ, part by part; rule + parts = estimate, to rounding.
 * The rule is a share of a use. Its share is exchanged for the share while running (leakage basis), its use for the use
 * before the work (use), then the product for the estimate without regain (surroundings: temperatures, air that unequal
 * leaks draw in, conduction), then with it (regain); the blower's saving is compared as a whole. The order is stated, for
 * the size of a part hangs on it. Source: derived (telescoping sum). Leaves the kernel as it was.
 */
export function deemedParts(input: AssembleInput, rule: RuleTerms): DeemedPart[] {
  const { house, kernel } = input;
  const before = usesOf(input, kernel.before);
  const saved = less(before, usesOf(input, kernel.after));
  const share = shareKept(input);
  const out = new Float64Array(kernel.layout.keys.length);
  const bare = house.space.base();
  for (const { isConditioned, regainAt } of house.places) if (!isConditioned) bare[regainAt] = 0;
  kernel.evaluate(bare, out);
  const savedBare = less(usesOf(input, kernel.before), usesOf(input, kernel.after));
  kernel.evaluate(house.space.base(), out);

  const ruleUse = {
    heating: rule.heatingShare > 0 ? rule.savings.heatingTherms / rule.heatingShare : 0,
    cooling: rule.coolingShare > 0 ? rule.savings.coolingKWh / rule.coolingShare : 0,
  };
  const part = (id: DeemedPart["id"], title: string, electricityKWh: number, naturalGasTherms: number): DeemedPart => ({
    id,
    title,
    electricityKWh,
    naturalGasTherms,
  });
  return [
    part(
      "leakage-basis",
      "Leakage while running over the real fan flow, not at 25 Pa over the rule's airflow",
      (share - rule.coolingShare) * ruleUse.cooling,
      (share - rule.heatingShare) * ruleUse.heating,
    ),
    part(
      "use",
      "What the equipment really uses before the work, not hours times capacity",
      share * (before.coolingKWh - ruleUse.cooling),
      share * (before.heatingTherms - ruleUse.heating),
    ),
    part(
      "surroundings",
      "Temperatures around the ducts, air that unequal leaks draw in, moisture",
      savedBare.coolingKWh - share * before.coolingKWh,
      savedBare.heatingTherms - share * before.heatingTherms,
    ),
    part(
      "regain",
      "What the places around the ducts give back to the rooms",
      saved.coolingKWh - savedBare.coolingKWh,
      saved.heatingTherms - savedBare.heatingTherms,
    ),
    part(
      "blower",
      "Run time and power of the blower, not a share of the fuel",
      saved.blowerKWh - rule.savings.blowerKWh,
      0,
    ),
  ];
}
