import { deemedEfficiencySavings } from "#lib/savings/deemed-efficiency-savings.ts";
import { DEEMED_CONSTANTS, deemedLeakageSavings } from "#lib/savings/deemed-leakage-savings.ts";
import type { DeemedRule } from "#lib/savings/deemed-rules.ts";
import { BTU_PER_KWH, BTU_PER_THERM } from "#lib/units/conversions.ts";
import type { AssembleInput } from "./assemble-result.ts";

/** Seasons that the project's rules know: cooling, and heating by what it burns. */
export const DEEMED_SEASONS = ["cooling", "gas-heating", "electric-heating"] as const;
export type DeemedSeasonKind = (typeof DEEMED_SEASONS)[number];

/** One season as the rule sees it: a share of a use. kWh, or therms of gas heating. */
export interface DeemedSeason {
  kind: DeemedSeasonKind;
  systemIndexes: readonly number[];
  /** Of the use, what the rule credits. */
  share: number;
  /** Use that the rule gives the season. */
  use: number;
  saved: number;
  /** Blower electricity that the rule adds; gas heating only. */
  blowerKWh: number;
  fullLoadHours: number;
}

const sum = (values: readonly number[]) => values.reduce((total, each) => total + each, 0);
const mean = (values: readonly number[]) => sum(values) / values.length;

function systemsOf({ house }: AssembleInput, kind: DeemedSeasonKind): number[] {
  return [...house.systems.keys()].filter((s) => {
    const { heating, cooling } = house.systems[s]!;
    if (kind === "cooling") return cooling !== null;
    return heating?.fuel === (kind === "gas-heating" ? "naturalGas" : "electricity");
  });
}

interface Plates {
  /** Of the cooling, of the furnace's input, of electric heat's output. */
  capacityBtuPerH: number;
  /** Output that the need is met with. */
  outputBtuPerH: number;
  /** SEER, yearly efficiency, or for a heat pump the mean of the COPs at its two ratings. */
  efficiency: number;
}

/** What the nameplates say of the systems of a season. */
function platesOf({ house }: AssembleInput, kind: DeemedSeasonKind, systemIndexes: readonly number[]): Plates {
  const base = (place: number) => house.space.parameters[place]!.base;
  const systems = systemIndexes.map((s) => house.systems[s]!);
  if (kind === "cooling") {
    const capacityBtuPerH = sum(systems.map(({ cooling }) => base(cooling!.capacityAt)));
    return {
      capacityBtuPerH,
      outputBtuPerH: capacityBtuPerH,
      efficiency: mean(systems.map(({ cooling }) => base(cooling!.seerAt))),
    };
  }
  const efficiency = mean(
    systems.map(({ heating }) =>
      heating!.isHeatPump ? (heating!.copAt47 + heating!.copAt17) / 2 : base(heating!.efficiencyAt),
    ),
  );
  const outputs = systems.map(({ heating }) => base(heating!.capacityAt));
  if (kind === "electric-heating") {
    return { capacityBtuPerH: sum(outputs), outputBtuPerH: sum(outputs), efficiency };
  }
  const capacityBtuPerH = sum(systems.map(({ heating }, k) => outputs[k]! / base(heating!.efficiencyAt)));
  return { capacityBtuPerH, outputBtuPerH: capacityBtuPerH * efficiency, efficiency };
}

/** Need of the systems of a season, Btu: their group's. */
function needOf({ house, kernel }: AssembleInput, kind: DeemedSeasonKind): number {
  const fuel = kind === "gas-heating" ? "naturalGas" : "electricity";
  const mode = kind === "cooling" ? "cooling" : "heating";
  return sum(
    house.loads.groups.map((group, g) => (group.mode === mode && group.fuel === fuel ? kernel.loadBtu[g]! : 0)),
  );
}

/** Seasonal efficiency of the ducts over several systems, weighted by what each serves: Σ share / Σ share/η. */
function ductEfficiency(
  { house, kernel }: AssembleInput,
  kind: DeemedSeasonKind,
  systemIndexes: readonly number[],
  when: "before" | "after",
): number {
  const mode = kind === "cooling" ? "cooling" : "heating";
  const served = systemIndexes.map((s) => house.systems[s]!.servedShare);
  const inverse = systemIndexes.map((s, k) => served[k]! / kernel[when].systems[s]!.modes[mode]!.seasonalEfficiency);
  return Math.min(1, sum(served) / sum(inverse));
}

/**
 * A rule over the seasons of this house. By leakage: each kind of heating is credited with the part of the reduction that
 * its air is of all heating air, so that one kind alone gets all. By efficiency: the rule's own table of efficiencies is
 * not here, so those of this estimate stand in. Electric heating is the same formula with its efficiency, in kWh.
 * Source: il-trm (from memory). @throws InputProblem where the rule cannot be applied.
 */
export function deemedSeasons(input: AssembleInput, rule: DeemedRule, reductionCfm25: number): DeemedSeason[] {
  const { airflowPerBtuPerH = DEEMED_CONSTANTS.defaultAirflowPerBtuPerH } = rule.constants as {
    airflowPerBtuPerH?: number;
  };
  const kinds = DEEMED_SEASONS.map((kind) => ({ kind, systemIndexes: systemsOf(input, kind) }))
    .filter(({ systemIndexes }) => systemIndexes.length > 0)
    .map((each) => ({ ...each, plates: platesOf(input, each.kind, each.systemIndexes) }));
  const heatingAir = sum(kinds.map(({ kind, plates }) => (kind === "cooling" ? 0 : plates.capacityBtuPerH)));
  return kinds.map(({ kind, systemIndexes, plates }) => {
    const { capacityBtuPerH, outputBtuPerH, efficiency } = plates;
    const fullLoadHours = needOf(input, kind) / outputBtuPerH;
    const season =
      kind === "cooling"
        ? { coolingCapacityBtuPerH: capacityBtuPerH, coolingFullLoadHours: fullLoadHours, seer: efficiency }
        : {
            heatingCapacityBtuPerH: capacityBtuPerH,
            heatingFullLoadHours: fullLoadHours,
            heatingEfficiency: efficiency,
          };
    const part = kind === "cooling" ? 1 : capacityBtuPerH / heatingAir;
    const isByLeakage = rule.formula === "deemed-leakage-savings";
    const efficiencyBefore = isByLeakage ? 1 : ductEfficiency(input, kind, systemIndexes, "before");
    const efficiencyAfter = isByLeakage ? 1 : ductEfficiency(input, kind, systemIndexes, "after");
    const { coolingKWh, heatingTherms, blowerKWh } = isByLeakage
      ? deemedLeakageSavings({ leakageReductionCfm25: part * reductionCfm25, ...rule.constants, ...season })
      : deemedEfficiencySavings({ efficiencyBefore, efficiencyAfter, ...rule.constants, ...season });
    const rulesAirCfm =
      kind === "cooling"
        ? (capacityBtuPerH / DEEMED_CONSTANTS.btuPerHPerTon) * DEEMED_CONSTANTS.coolingCfmPerTon
        : capacityBtuPerH * airflowPerBtuPerH;
    const share = isByLeakage
      ? (part * reductionCfm25 * (rule.constants.supplyShare! + rule.constants.returnShare! / 2)) / rulesAirCfm
      : 1 - efficiencyBefore / efficiencyAfter;
    const use = (fullLoadHours * capacityBtuPerH) / efficiency;
    const known = { kind, systemIndexes, share, fullLoadHours };
    if (kind === "cooling") return { ...known, use: use / 1000, saved: coolingKWh, blowerKWh: 0 };
    if (kind === "gas-heating") return { ...known, use: use / BTU_PER_THERM, saved: heatingTherms, blowerKWh };
    return {
      ...known,
      use: use / BTU_PER_KWH,
      saved: (heatingTherms * BTU_PER_THERM) / BTU_PER_KWH,
      blowerKWh: 0,
    };
  });
}
