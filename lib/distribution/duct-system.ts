import { AIR_SPECIFIC_HEAT, MINUTES_PER_HOUR } from "#lib/air/standard-air.ts";
import { refuse } from "#lib/errors/input-problem.ts";
import { requireAbove } from "#lib/errors/require-number.ts";
import type { Cfm, PoundsPerCubicFoot, Ratio, ThermalConductance } from "#lib/units/quantity.ts";
import { total } from "./air-path.ts";
import { conductionFactor, meanConductionFactor } from "./conduction-factor.ts";

/**
 * One duct system while it runs: any number of runs on each side in any number of places. Lists have one entry a place;
 * runs in one place are added up beforehand.
 */
export interface RunningDucts {
  /** Σ area/R of the runs in each place. */
  readonly supplyConductanceBtuPerHF: Float64Array;
  readonly returnConductanceBtuPerHF: Float64Array;
  /**
   * Leakage between duct and place at operating pressure: to outside for places outside the house's pressure boundary,
   * total for places inside it (their regain then credits what comes back; never both).
   */
  readonly supplyLeakageCfm: Float64Array;
  readonly returnLeakageCfm: Float64Array;
  /** Part of what the ducts lose to each place that comes back to the rooms. */
  readonly regainFactor: Float64Array;
  /**
   * Of the air that a leak blows into a place or draws from it: the part that the place passes on to the rooms, or draws
   * from them, and the part that it trades with outdoors. They add up to 1; both 0 leave the place as it was, as the
   * closed forms of the catalogue do.
   */
  readonly roomAirShare: Float64Array;
  readonly outdoorAirShare: Float64Array;
  fanFlowCfm: Cfm;
  airDensityLbPerFt3: PoundsPerCubicFoot;
  /** Outdoor air that enters the rooms only because this blower runs: Q_on − Q_off, below 0 when less enters. */
  extraInfiltrationCfm: Cfm;
  /** What cycling leaves: see cyclingFactor. */
  cyclingFactor: Ratio;
}

/** What holds for every bin of a season, worked out once. Made by createPreparedDucts, filled by prepareDucts. */
export interface PreparedDucts {
  /** Air through the blower. */
  airMassRateLbPerH: number;
  airHeatRateBtuPerHF: ThermalConductance;
  extraAirMassRateLbPerH: number;
  cyclingFactor: Ratio;
  /** Share of the flow that reaches the rooms, or comes from them. */
  supplyLeakFactor: Ratio;
  returnLeakFactor: Ratio;
  /** Share of the temperature difference left at the end of a side, and its mean along the side. */
  supplyConductionFactor: Ratio;
  returnConductionFactor: Ratio;
  supplyMeanFactor: Ratio;
  returnMeanFactor: Ratio;
  /** By place: conductance over that of the side; leakage over the fan flow. */
  readonly supplyConductanceShare: Float64Array;
  readonly returnConductanceShare: Float64Array;
  readonly supplyLeakShare: Float64Array;
  readonly returnLeakShare: Float64Array;
  /** By place: conductance times regain, Btu/(h·°F), and the sums of both sides. */
  readonly supplyRegainBtuPerHF: Float64Array;
  readonly returnRegainBtuPerHF: Float64Array;
  supplyRegainSumBtuPerHF: ThermalConductance;
  returnRegainSumBtuPerHF: ThermalConductance;
  /** Part of the fan flow that leaks from the supply into places and whose heat comes back: Σ F·leak share. */
  supplyLeakRegainFactor: Ratio;
  /** By place, Btu/(h·°F), for each degree that the rooms are above it: heat rate · room-air share · F·return leak share. */
  readonly returnTradeBtuPerHF: Float64Array;
  /** For each degree that outdoors is below the place: heat rate · outdoor-air share · F·return leak share. */
  readonly returnDrawnBtuPerHF: Float64Array;
  /** For each degree that the rooms are above it, a cost: heat rate · supply leak share · (room-air share − F). */
  readonly supplyTradeBtuPerHF: Float64Array;
}

/** An empty record for a number of places; fill it again for each draw, nothing more is allocated. */
export function createPreparedDucts(placesCount: number): PreparedDucts {
  const column = () => new Float64Array(placesCount);
  return {
    airMassRateLbPerH: 0,
    airHeatRateBtuPerHF: 0,
    extraAirMassRateLbPerH: 0,
    cyclingFactor: 1,
    supplyLeakFactor: 1,
    returnLeakFactor: 1,
    supplyConductionFactor: 1,
    returnConductionFactor: 1,
    supplyMeanFactor: 1,
    returnMeanFactor: 1,
    supplyConductanceShare: column(),
    returnConductanceShare: column(),
    supplyLeakShare: column(),
    returnLeakShare: column(),
    supplyRegainBtuPerHF: column(),
    returnRegainBtuPerHF: column(),
    supplyRegainSumBtuPerHF: 0,
    returnRegainSumBtuPerHF: 0,
    supplyLeakRegainFactor: 0,
    returnTradeBtuPerHF: column(),
    returnDrawnBtuPerHF: column(),
    supplyTradeBtuPerHF: column(),
  };
}

/**
 * Works out what holds for every bin: flows, leak and conduction factors, weights of the places.
 * Conduct with Σ A/R toward the conductance-weighted zone temperature; leak at the leak-weighted one. Source: ashrae-152
 * (form of), derived for several places. Left out: runs in different places one after the other; all of a side's places
 * are taken as mixed along its length. What leaks blow into a place or draw from it also changes the air that the place
 * trades: a supply leak's warmth counts from the place's own temperature, air that a return draws is made up from the
 * rooms or from outdoors, and F of what that does to the place reaches the rooms.
 * @throws InputProblem when there is no flow, the leaks of a side are not below it, or a conductance is not finite.
 */
export function prepareDucts(ducts: RunningDucts, out: PreparedDucts): void {
  const { fanFlowCfm } = ducts;
  requireAbove({ field: "fanFlowCfm", label: "Fan flow", value: fanFlowCfm, unit: "cfm" });
  requireAbove({ field: "airDensityLbPerFt3", label: "Air density", value: ducts.airDensityLbPerFt3, unit: "lb/ft³" });
  out.airMassRateLbPerH = MINUTES_PER_HOUR * fanFlowCfm * ducts.airDensityLbPerFt3;
  out.airHeatRateBtuPerHF = out.airMassRateLbPerH * AIR_SPECIFIC_HEAT.value;
  out.extraAirMassRateLbPerH = MINUTES_PER_HOUR * ducts.extraInfiltrationCfm * ducts.airDensityLbPerFt3;
  out.cyclingFactor = ducts.cyclingFactor;
  out.supplyLeakFactor = 1 - fillShares(ducts.supplyLeakageCfm, fanFlowCfm, out.supplyLeakShare);
  out.returnLeakFactor = 1 - fillShares(ducts.returnLeakageCfm, fanFlowCfm, out.returnLeakShare);
  requireAbove({
    field: "supplyLeakageCfm",
    label: "Share of the flow that reaches the rooms",
    value: out.supplyLeakFactor,
  });
  requireAbove({ field: "returnLeakageCfm", label: "Share of the flow from the rooms", value: out.returnLeakFactor });
  const supply = total(ducts.supplyConductanceBtuPerHF);
  const returned = total(ducts.returnConductanceBtuPerHF);
  if (!(supply >= 0 && supply < Number.POSITIVE_INFINITY && returned >= 0 && returned < Number.POSITIVE_INFINITY)) {
    refuse({
      field: "supplyConductanceBtuPerHF",
      detail: `Area over R must be a finite number of at least 0, not ${supply} and ${returned}`,
      fix: "Use effective R-values: a duct without resistance has no answer.",
    });
  }
  fillShares(ducts.supplyConductanceBtuPerHF, supply, out.supplyConductanceShare);
  fillShares(ducts.returnConductanceBtuPerHF, returned, out.returnConductanceShare);
  out.supplyConductionFactor = conductionFactor(supply, out.airHeatRateBtuPerHF);
  out.returnConductionFactor = conductionFactor(returned, out.airHeatRateBtuPerHF);
  out.supplyMeanFactor = meanConductionFactor(supply, out.airHeatRateBtuPerHF);
  out.returnMeanFactor = meanConductionFactor(returned, out.airHeatRateBtuPerHF);
  const { regainFactor } = ducts;
  out.supplyRegainSumBtuPerHF = fillProducts(ducts.supplyConductanceBtuPerHF, regainFactor, out.supplyRegainBtuPerHF);
  out.returnRegainSumBtuPerHF = fillProducts(ducts.returnConductanceBtuPerHF, regainFactor, out.returnRegainBtuPerHF);
  out.supplyLeakRegainFactor = 0;
  for (let p = 0; p < regainFactor.length; p++) {
    const regain = regainFactor[p]!;
    out.supplyLeakRegainFactor += regain * out.supplyLeakShare[p]!;
    const { airHeatRateBtuPerHF } = out;
    const [fromRooms, fromOutdoors] = [ducts.roomAirShare[p]!, ducts.outdoorAirShare[p]!];
    out.returnTradeBtuPerHF[p] = airHeatRateBtuPerHF * fromRooms * regain * out.returnLeakShare[p]!;
    out.returnDrawnBtuPerHF[p] = airHeatRateBtuPerHF * fromOutdoors * regain * out.returnLeakShare[p]!;
    const passedOn = fromRooms - regain * (fromRooms + fromOutdoors);
    out.supplyTradeBtuPerHF[p] = airHeatRateBtuPerHF * passedOn * out.supplyLeakShare[p]!;
  }
}

/** Each value over the whole; nothing where the whole is 0. Returns the sum of the shares. */
function fillShares(values: Float64Array, whole: number, out: Float64Array): number {
  let sum = 0;
  for (let p = 0; p < values.length; p++) {
    out[p] = whole > 0 ? values[p]! / whole : 0;
    sum += out[p]!;
  }
  return sum;
}

function fillProducts(values: Float64Array, factors: Float64Array, out: Float64Array): number {
  let sum = 0;
  for (let p = 0; p < values.length; p++) {
    out[p] = values[p]! * factors[p]!;
    sum += out[p]!;
  }
  return sum;
}
