import type { Loads, SeasonLoad } from "#lib/job/result/loads-result.ts";
import { normalQuantile } from "#lib/numeric/distributions.ts";
import { DAYS_PER_YEAR } from "#lib/units/conversions.ts";
import { formatNumber } from "#lib/units/format.ts";
import type { HouseModel } from "../complete/complete-house.ts";
import type { LoadGroup } from "../complete/complete-loads.ts";
import type { EvidenceKind } from "../complete/load-evidence.ts";
import { BTU_PER_UNIT, FUEL_LABELS, SALE_UNIT } from "../fuels.ts";
import { fillEnergy, groupBuildingLoad, groupInputBtu, groupLoadForUse } from "../kernel/fill-energy.ts";
import type { HouseKernel } from "../kernel/house-kernel.ts";
import { outputKey } from "../kernel/write-outputs.ts";
import type { Ledger } from "../ledger.ts";
import { type Evaluated, readRanged } from "./energy.ts";

interface Input {
  house: HouseModel;
  /** Its state before the work is that of the deterministic evaluation. */
  kernel: HouseKernel;
  evaluated: Evaluated;
  ledger: Ledger;
}

type Evidence = SeasonLoad["evidence"][number];

/** Two pieces of evidence disagree beyond their doubt 1 time in 10 by chance; less than this apart is no matter. */
const DISAGREEMENT_Z = 1.645;
const LEAST_DISAGREEMENT_RATIO = 1.25;
/** The blower of a furnace is on the same meter, so a hair more than the bills is no contradiction. */
const BILLED_TOLERANCE_RATIO = 1.02;
const TITLES: Readonly<Record<EvidenceKind, string>> = {
  bills: "the bills",
  "known-use": "the known use",
  building: "the building",
};

/** What it likely means when evidence says more or less than what is used. */
const MEANINGS: Readonly<Record<EvidenceKind, { more: string; less: string }>> = {
  building: {
    more: "Likely the house is better insulated or tighter than usual for its age, is kept at a milder setting, stands partly empty, or something else helps, such as a stove or fans.",
    less: "Likely the house is leakier or less insulated than usual for its age, is kept at a stronger setting, or something else is on the same meter.",
  },
  "known-use": {
    more: "Likely the known use holds hot water, cooking or lights as well, or is of a harder year.",
    less: "Likely the known use is of a milder year, or leaves out a part of the season.",
  },
  bills: {
    more: "Likely the bills are of a harder year, or other uses that follow the weather are on the same meter.",
    less: "Likely the bills are of a milder year, or the house stood empty for a while.",
  },
};

/** In a sentence one says 390 therms; gal and kWh stay. */
const plural = (unit: string): string => (unit === "therm" ? "therms" : unit);

function warnOfDisagreement(group: LoadGroup, evidence: readonly Evidence[], ledger: Ledger): void {
  const used = evidence.find(({ isUsed }) => isUsed)!;
  for (const other of evidence) {
    if (other.isUsed || !(other.value > 0) || !(used.value > 0)) continue;
    const apart = Math.abs(Math.log(other.value / used.value));
    const doubt = Math.hypot(other.relativeUncertaintyRatio, used.relativeUncertaintyRatio);
    if (!(apart > Math.max(Math.log(LEAST_DISAGREEMENT_RATIO), DISAGREEMENT_Z * doubt))) continue;
    const isMore = other.value > used.value;
    ledger.warn({
      code: "load-evidence-disagrees",
      path: "#/energy",
      severity: "doubt",
      what: `By ${TITLES[other.from]} the house would use ${formatNumber(other.value)} ${plural(other.unit)} of ${FUEL_LABELS[group.fuel]} a year for ${group.mode}, by ${TITLES[used.from]} ${formatNumber(used.value)} ${plural(used.unit)}.`,
      why: MEANINGS[other.from][isMore ? "more" : "less"],
      nextMove: `The estimate goes by ${TITLES[used.from]}. Ask about it, and correct what is wrong.`,
    });
  }
}

function seasonOf(input: Input, g: number): SeasonLoad {
  const { house, kernel, ledger } = input;
  const group = house.loads.groups[g]!;
  const before = { house, state: kernel.before };
  const unit = SALE_UNIT[group.fuel];
  const z = normalQuantile(0.9);
  const needLeft = house.space.parameters[house.loads.otherMeasures.needLeftAt[group.mode]]!.base;
  const evidence = group.evidence.map(({ from, useBtu, includesBlower, relativeUncertainty, detail, source }) => {
    const isUsed = from === group.used.from;
    const needBtu = isUsed
      ? kernel.loadBtu[g]! / needLeft
      : useBtu === null
        ? groupBuildingLoad(house, g)
        : groupLoadForUse(before, g, useBtu, includesBlower);
    const value = groupInputBtu(before, g, needBtu, false) / BTU_PER_UNIT[group.fuel];
    return {
      from,
      isUsed,
      value,
      low: value * Math.exp(-z * relativeUncertainty),
      high: value * Math.exp(z * relativeUncertainty),
      unit,
      needBtu,
      relativeUncertaintyRatio: relativeUncertainty,
      detail,
      source,
    };
  });
  warnOfDisagreement(group, evidence, ledger);
  return {
    mode: group.mode,
    fuel: group.fuel,
    systemIds: group.systemIndexes.map((s) => house.systems[s]!.id),
    evidence,
  };
}

function warnOfMoreThanBilled({ house, evaluated, ledger }: Input): void {
  for (const { fuel, totalUsePerYear } of house.loads.billed) {
    const estimated = readRanged(evaluated, outputKey.energy(fuel, "before", "year")).value;
    if (!(estimated > BILLED_TOLERANCE_RATIO * totalUsePerYear)) continue;
    ledger.warn({
      code: "more-than-billed",
      path: "#/energy/bills",
      severity: "problem",
      what: `Heating, cooling and blower would use ${formatNumber(estimated)} ${plural(SALE_UNIT[fuel])} of ${FUEL_LABELS[fuel]} a year, more than the ${formatNumber(totalUsePerYear)} ${plural(SALE_UNIT[fuel])} on the bills.`,
      why: "Nothing can be saved that is not used, so the evidence in use is too high.",
      nextMove: "Go by the bills, or check the known use and the equipment.",
    });
  }
}

/** How the yearly need of each season is known: every evidence side by side, and a warning where they disagree. */
export function loadsOf(input: Input): Loads {
  const { house, kernel } = input;
  const seasons = house.loads.groups.map((_, g) => seasonOf(input, g));
  // Weighing evidence went through the systems' months: they are put back.
  fillEnergy({ house, state: kernel.before, parameters: house.space.base(), loadBtu: kernel.loadBtu });
  warnOfMoreThanBilled(input);
  return {
    seasons,
    bills: house.loads.billed.map(({ fuel, periodsCount, yearly }) => ({
      fuel,
      model: yearly.choice.model,
      reason: yearly.choice.reason,
      periodsCount,
      unit: SALE_UNIT[fuel],
      baseUse: yearly.baseUsePerDay === null ? null : DAYS_PER_YEAR * yearly.baseUsePerDay,
      heatingUse: yearly.heatingUse,
      coolingUse: yearly.coolingUse,
      heatingBalanceF: yearly.heatingBalanceF,
      coolingBalanceF: yearly.coolingBalanceF,
      cvRmseRatio: yearly.choice.fit?.cvRmse ?? null,
      nmbeRatio: yearly.choice.fit?.nmbe ?? null,
      rSquaredRatio: yearly.choice.fit?.rSquared ?? null,
    })),
  };
}
