import type { DeemedPart } from "#lib/job/result/plan-result.ts";
import type { DeemedRule } from "#lib/savings/deemed-rules.ts";
import { BTU_PER_KWH, BTU_PER_THERM, WATTS_PER_KILOWATT } from "#lib/units/conversions.ts";
import type { HouseState } from "../kernel/house-state.ts";
import type { AssembleInput } from "./assemble-result.ts";
import type { DeemedSeason } from "./deemed-seasons.ts";

const total = (values: Float64Array) => values.reduce((sum, each) => sum + each, 0);

/** A season's use in one state: kWh, or therms of gas heating; of it the supplementary heat of heat pumps. */
interface SeasonUse {
  use: number;
  supplementary: number;
}

function usedIn(state: HouseState, { kind, systemIndexes }: DeemedSeason): SeasonUse {
  const perUnit = kind === "gas-heating" ? BTU_PER_THERM : BTU_PER_KWH;
  const found = { use: 0, supplementary: 0 };
  for (const s of systemIndexes) {
    const mode = state.systems[s]!.modes[kind === "cooling" ? "cooling" : "heating"]!;
    found.use += total(mode.inputBtuBySlot) / perUnit;
    found.supplementary += total(mode.supplementaryBtuBySlot) / perUnit;
  }
  return found;
}

/** Electricity of all blowers, kWh. */
function blowerKWh({ systems }: HouseState): number {
  let sum = 0;
  for (const { modes, blowerPowerW } of systems) {
    for (const mode of [modes.heating, modes.cooling]) {
      if (mode) sum += (total(mode.runHoursBySlot) * blowerPowerW) / WATTS_PER_KILOWATT;
    }
  }
  return sum;
}

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

type PartId = DeemedPart["id"];
/** What a part is worth of one season, in the season's unit. */
type SeasonParts = Partial<Record<PartId, number>>;

interface Saved {
  before: SeasonUse;
  saved: SeasonUse;
}

const savedOf = ({ kernel }: AssembleInput, season: DeemedSeason): Saved => {
  const before = usedIn(kernel.before, season);
  const after = usedIn(kernel.after, season);
  return {
    before,
    saved: { use: before.use - after.use, supplementary: before.supplementary - after.supplementary },
  };
};

/** What the work saves of the cooling alone, kWh, by this estimate. */
export const coolingSaved = (input: AssembleInput, season: DeemedSeason): number => savedOf(input, season).saved.use;

function leakageParts(season: DeemedSeason, share: number, { before, saved }: Saved, bare: Saved): SeasonParts {
  return {
    "leakage-basis": (share - season.share) * season.use,
    use: share * (before.use - season.use),
    surroundings: bare.saved.use - bare.saved.supplementary - share * before.use,
    supplementary: bare.saved.supplementary,
    regain: saved.use - bare.saved.use,
  };
}

function efficiencyParts(season: DeemedSeason, { before, saved }: Saved): SeasonParts {
  return {
    use: season.share * (before.use - season.use),
    equipment: saved.use - saved.supplementary - season.share * before.use,
    supplementary: saved.supplementary,
  };
}

const TITLES: Readonly<Record<PartId, string>> = {
  "leakage-basis": "Leakage while running over the real fan flow, not at 25 Pa over the rule's airflow",
  use: "What the equipment really uses before the work, not hours times capacity",
  surroundings: "Temperatures around the ducts, air that unequal leaks draw in, moisture",
  equipment: "What the equipment makes of it: part load, its airflow, how capacity follows the weather",
  supplementary: "Supplementary heat that heat pumps no longer need",
  regain: "What the places around the ducts give back to the rooms",
  blower: "Run time and power of the blower, not a share of the fuel",
};
const BY_LEAKAGE = ["leakage-basis", "use", "surroundings", "supplementary", "regain"] as const;
const BY_EFFICIENCY = ["use", "equipment", "supplementary"] as const;

/**
 * Why the estimate and a program's rule differ, part by part; rule + parts = estimate, to rounding.
 * In each season the rule is a share of a use. By leakage its share is exchanged for the share while running (leakage
 * basis), its use for the use before the work (use), then the product for the estimate without regain (surroundings; heat
 * pumps' strips told apart), then with it (regain). By efficiency the share is the estimate's own, so its use is exchanged
 * and what remains is the equipment's. The blower's saving is compared as a whole. The order is stated, for the size of a
 * part hangs on it. Source: derived (telescoping sum). Leaves the kernel as it was.
 */
export function deemedParts(input: AssembleInput, rule: DeemedRule, seasons: readonly DeemedSeason[]): DeemedPart[] {
  const { house, kernel } = input;
  const real = seasons.map((season) => savedOf(input, season));
  const blowers = blowerKWh(kernel.before) - blowerKWh(kernel.after);
  const share = shareKept(input);
  const isByLeakage = rule.formula === "deemed-leakage-savings";
  const out = new Float64Array(kernel.layout.keys.length);
  const bareHouse = house.space.base();
  for (const { isConditioned, regainAt } of house.places) if (!isConditioned) bareHouse[regainAt] = 0;
  if (isByLeakage) kernel.evaluate(bareHouse, out);
  const parts = seasons.map((season, k) =>
    isByLeakage ? leakageParts(season, share, real[k]!, savedOf(input, season)) : efficiencyParts(season, real[k]!),
  );
  if (isByLeakage) kernel.evaluate(house.space.base(), out);
  const hasStrips = house.systems.some(({ heating }) => heating?.isHeatPump);
  const worth = (id: PartId, isGas: boolean) =>
    seasons.reduce((sum, { kind }, k) => sum + ((kind === "gas-heating") === isGas ? (parts[k]![id] ?? 0) : 0), 0);
  const part = (id: PartId, electricityKWh: number, naturalGasTherms: number): DeemedPart => ({
    id,
    title: TITLES[id],
    electricityKWh,
    naturalGasTherms,
  });
  return [
    ...(isByLeakage ? BY_LEAKAGE : BY_EFFICIENCY)
      .filter((id) => id !== "supplementary" || hasStrips)
      .map((id) => part(id, worth(id, false), worth(id, true))),
    part("blower", blowers - seasons.reduce((sum, season) => sum + season.blowerKWh, 0), 0),
  ];
}
