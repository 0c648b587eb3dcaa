import { InputProblem } from "#lib/errors/input-problem.ts";
import type { Savings } from "#lib/job/result/energy-result.ts";
import type { Leakage } from "#lib/job/result/leakage-result.ts";
import type { Deemed, ScopeOption } from "#lib/job/result/plan-result.ts";
import { DEEMED_RULES } from "#lib/savings/deemed-rules.ts";
import { formatNumber } from "#lib/units/format.ts";
import { outputKey } from "../kernel/write-outputs.ts";
import type { AssembleInput } from "./assemble-result.ts";
import { coolingSaved, deemedParts } from "./deemed-parts.ts";
import { type DeemedSeason, type DeemedSeasonKind, deemedSeasons } from "./deemed-seasons.ts";
import { readRanged } from "./energy.ts";

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
  const after = readRanged(
    input.isVerified ? input.evaluated : predicted,
    outputKey.plan(0, "predictedToOutside"),
  ).value;
  const reductionCfm25 = leakage.toOutsideCfm25.value - after;
  const isByLeakage = rule.formula === "deemed-leakage-savings";
  let seasons: DeemedSeason[];
  try {
    seasons = deemedSeasons(input, rule, Math.max(0, reductionCfm25));
  } catch (error) {
    if (!(error instanceof InputProblem)) throw error;
    ledger.warn({
      code: "deemed-rule-does-not-apply",
      path: "#/plan/deemedRuleId",
      severity: "doubt",
      what: `“${rule.title}” cannot be applied to this house.`,
      why: "By its own formula the reduction is more air than the equipment moves.",
      nextMove: "Check the leakage and the capacities. The estimate stands without the rule.",
    });
    return null;
  }
  if (seasons.length === 0) return null;
  const parts = deemedParts(input, rule, seasons);
  const by = (kind: DeemedSeasonKind) => seasons.find((season) => season.kind === kind);
  const cooling = by("cooling");
  const coolingKWh = cooling?.saved ?? 0;
  const heatingKWh = by("electric-heating")?.saved ?? 0;
  const heatingTherms = by("gas-heating")?.saved ?? 0;
  const blowerKWh = seasons.reduce((sum, season) => sum + season.blowerKWh, 0);
  // A rule's peak: what is saved at full load, over its hours, as far as it falls into the program's.
  const coincident = (kWh: number): number =>
    cooling && cooling.fullLoadHours > 0 ? (kWh / cooling.fullLoadHours) * rule.coincidenceFactor : 0;
  const coolingSavedKWh = cooling ? coolingSaved(input, cooling) : 0;
  const more = (rulesValue: number, ours: number, unit: string) =>
    `The rule gives ${formatNumber(rulesValue)} ${unit}, this estimate ${formatNumber(ours)} ${unit}.`;
  const savedOils = [
    ...(savings.propaneGallons.value === 0 ? [] : [`${formatNumber(savings.propaneGallons.value)} gal of propane`]),
    ...(savings.fuelOilGallons.value === 0 ? [] : [`${formatNumber(savings.fuelOilGallons.value)} gal of heating oil`]),
  ];
  return {
    ruleId: rule.id,
    title: rule.title,
    edition: rule.edition,
    reductionCfm25,
    coolingKWh,
    heatingTherms,
    blowerKWh,
    heatingKWh,
    engineeringElectricityKWh: savings.electricityKWh.value,
    engineeringNaturalGasTherms: savings.naturalGasTherms.value,
    coincidentKW: coincident(coolingKWh),
    engineeringCoincidentKW: coincident(coolingSavedKWh),
    engineeringPeakKW: savings.peakKW.value,
    parts,
    difference: [
      more(coolingKWh + heatingKWh + blowerKWh, savings.electricityKWh.value, "kWh"),
      ...(heatingTherms === 0 && savings.naturalGasTherms.value === 0
        ? []
        : [more(heatingTherms, savings.naturalGasTherms.value, "therms")]),
      ...(savedOils.length > 0
        ? [
            `The rule knows gas and electricity alone: ${savedOils.join(" and ")} that this estimate saves stand beside it.`,
          ]
        : []),
      ...(isByLeakage
        ? [
            "The rule counts a reduction at 25 Pa as if it were the flow while running; this estimate uses the pressures of this system.",
            "The rule knows neither where the ducts run nor what comes back by regain; this estimate does.",
          ]
        : [
            "The rule takes the efficiencies of the ducts from a table of its own, which is not here: those of this estimate stand in.",
          ]),
      ...(reductionCfm25 < 0 && isByLeakage
        ? ["The leakage is not lower after the work, so the rule credits nothing and its parts are the estimate's own."]
        : []),
      ...(heatingKWh === 0
        ? []
        : [
            "Electric heating goes by the rule's formula for gas, in kWh, with the nameplate's efficiency; of a heat pump the mean of its two COPs.",
          ]),
      "The hours are this house's own season, not the rule's table of cities.",
      ...(cooling
        ? [
            `Peak by the program's hours: ${formatNumber(coincident(coolingKWh), { significantDigits: 2 })} kW by the rule (coincidence factor ${rule.coincidenceFactor}); on the design day this estimate saves ${formatNumber(savings.peakKW.value, { significantDigits: 2 })} kW.`,
          ]
        : []),
    ],
    source: rule.source,
  };
}
