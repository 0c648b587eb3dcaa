import type { Savings } from "#lib/job/result/energy-result.ts";
import type { Leakage } from "#lib/job/result/leakage-result.ts";
import type { Deemed, ScopeOption } from "#lib/job/result/plan-result.ts";
import { DEEMED_CONSTANTS, deemedLeakageSavings } from "#lib/savings/deemed-leakage-savings.ts";
import { DEEMED_RULES } from "#lib/savings/deemed-rules.ts";
import { formatNumber } from "#lib/units/format.ts";
import { outputKey } from "../kernel/write-outputs.ts";
import type { AssembleInput } from "./assemble-result.ts";
import { deemedParts } from "./deemed-parts.ts";
import { readRanged } from "./energy.ts";

/** Full-load hours of a mode: the season's need over the capacity that meets it. */
function fullLoadHours({ house, kernel }: AssembleInput, mode: "heating" | "cooling", capacityBtuPerH: number): number {
  const load = house.loads.groups.reduce((sum, group, g) => sum + (group.mode === mode ? kernel.loadBtu[g]! : 0), 0);
  return capacityBtuPerH > 0 ? load / capacityBtuPerH : 0;
}

/**
 * A program's deemed rule beside the estimate, with what makes the two differ. The rule's own hours are not known
 * here, so the hours of this house's season are used, and that is said.
 */
export function deemedOf(
  input: AssembleInput,
  leakage: Leakage,
  savings: Savings,
  chosen: ScopeOption | null,
): Deemed | null {
  const { house, ledger, predicted } = input;
  const ruleId = house.job.plan?.deemedRuleId;
  if (!ruleId || !chosen) return null;
  const rule = DEEMED_RULES.find((each) => each.id === ruleId);
  if (!rule) {
    ledger.warn({
      code: "deemed-rule-unknown",
      path: "#/plan/deemedRuleId",
      severity: "problem",
      what: `No deemed rule has the id “${ruleId}”.`,
      why: "The rule is data that a program publishes.",
      nextMove: `Use one of: ${DEEMED_RULES.map((each) => each.id).join(", ")}.`,
    });
    return null;
  }
  if (rule.formula !== "deemed-leakage-savings") return null;
  const after = readRanged(
    input.isVerified ? input.evaluated : predicted,
    outputKey.plan(0, "predictedToOutside"),
  ).value;
  const reductionCfm25 = leakage.toOutsideCfm25.value - after;
  const base = house.space.parameters;
  const cooling = house.systems.filter((system) => system.cooling);
  const heating = house.systems.filter((system) => system.heating && system.heating.fuel === "naturalGas");
  const sum = (values: readonly number[]) => values.reduce((total, each) => total + each, 0);
  const coolingCapacity = sum(cooling.map((system) => base[system.cooling!.capacityAt]!.base));
  const heatingCapacity = sum(
    heating.map((system) => base[system.heating!.capacityAt]!.base / base[system.heating!.efficiencyAt]!.base),
  );
  const heatingEfficiency =
    heating.length > 0 ? sum(heating.map((system) => base[system.heating!.efficiencyAt]!.base)) / heating.length : 0.8;
  const seer =
    cooling.length > 0 ? sum(cooling.map((system) => base[system.cooling!.seerAt]!.base)) / cooling.length : 12;
  if (!(reductionCfm25 > 0) || !(coolingCapacity > 0) || !(heatingCapacity > 0)) return null;
  const coolingHours = fullLoadHours(input, "cooling", coolingCapacity);
  const deemed = deemedLeakageSavings({
    leakageReductionCfm25: reductionCfm25,
    ...rule.constants,
    coolingCapacityBtuPerH: coolingCapacity,
    coolingFullLoadHours: coolingHours,
    seer,
    heatingCapacityBtuPerH: heatingCapacity,
    heatingFullLoadHours: fullLoadHours(input, "heating", heatingCapacity * heatingEfficiency),
    heatingEfficiency,
  });
  const creditedCfm = reductionCfm25 * (rule.constants.supplyShare! + rule.constants.returnShare! / 2);
  const parts = deemedParts(input, {
    savings: deemed,
    coolingShare:
      creditedCfm / ((coolingCapacity / DEEMED_CONSTANTS.btuPerHPerTon) * DEEMED_CONSTANTS.coolingCfmPerTon),
    heatingShare: creditedCfm / (heatingCapacity * rule.constants.airflowPerBtuPerH!),
  });
  // A rule's peak: what is saved at full load, over its hours, as far as it falls into the program's.
  const coincident = (coolingKWh: number): number =>
    coolingHours > 0 ? (coolingKWh / coolingHours) * rule.coincidenceFactor : 0;
  const coolingSavedKWh =
    deemed.coolingKWh +
    parts.reduce((total, { id, electricityKWh }) => total + (id === "blower" ? 0 : electricityKWh), 0);
  const more = (rulesValue: number, ours: number, unit: string) =>
    `The rule gives ${formatNumber(rulesValue)} ${unit}, this estimate ${formatNumber(ours)} ${unit}.`;
  return {
    ruleId: rule.id,
    title: rule.title,
    edition: rule.edition,
    reductionCfm25,
    coolingKWh: deemed.coolingKWh,
    heatingTherms: deemed.heatingTherms,
    blowerKWh: deemed.blowerKWh,
    engineeringElectricityKWh: savings.electricityKWh.value,
    engineeringNaturalGasTherms: savings.naturalGasTherms.value,
    coincidentKW: coincident(deemed.coolingKWh),
    engineeringCoincidentKW: coincident(coolingSavedKWh),
    engineeringPeakKW: savings.peakKW.value,
    parts: parts.map((part) => ({ ...part })),
    difference: [
      more(deemed.coolingKWh + deemed.blowerKWh, savings.electricityKWh.value, "kWh"),
      more(deemed.heatingTherms, savings.naturalGasTherms.value, "therms"),
      "The rule counts a reduction at 25 Pa as if it were the flow while running; this estimate uses the pressures of this system.",
      "The rule knows neither where the ducts run nor what comes back by regain; this estimate does.",
      "The hours are this house's own season, not the rule's table of cities.",
      `Peak by the program's hours: ${formatNumber(coincident(deemed.coolingKWh), { significantDigits: 2 })} kW by the rule (coincidence factor ${rule.coincidenceFactor}); on the design day this estimate saves ${formatNumber(savings.peakKW.value, { significantDigits: 2 })} kW.`,
    ],
    source: rule.source,
  };
}
