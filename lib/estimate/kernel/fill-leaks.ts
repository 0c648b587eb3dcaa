import { DUCT_LEAK_EXPONENT, flowAtPressure } from "#lib/air/flow-at-pressure.ts";
import type { HouseModel } from "../complete/complete-house.ts";
import type { PlaceModel } from "../complete/complete-places.ts";
import { CELLS, type HouseState } from "./house-state.ts";
import { clearLeakState, type LeakState } from "./leak-state.ts";

const REFERENCE_PA = 25;

/**
 * How the leakage that nobody has found spreads over the places of a system: by the duct surface there. One row a
 * system, side and kind of cell; each row adds up to 1.
 */
export interface UnfoundShares {
  /** Index: (system × 4 + cell) × places + place. */
  readonly shares: Float64Array;
}

function isCandidate(place: PlaceModel, isOutside: boolean): boolean {
  return isOutside ? !place.isInsideBoundary : place.isInsideBoundary;
}

export function createUnfoundShares(house: HouseModel): UnfoundShares {
  const { systems, places } = house;
  const shares = new Float64Array(systems.length * CELLS.length * places.length);
  systems.forEach(({ ducts }, s) => {
    CELLS.forEach(({ side, isOutside }, c) => {
      const row = shares.subarray((s * CELLS.length + c) * places.length, (s * CELLS.length + c + 1) * places.length);
      const own = side === "supply" ? ducts.supplyAreaFt2 : ducts.returnAreaFt2;
      const candidates = [
        own,
        ducts.supplyAreaFt2.map((area, p) => area + ducts.returnAreaFt2[p]!),
        places.map(() => 1),
      ];
      for (const areas of candidates) {
        let total = 0;
        places.forEach((place, p) => {
          row[p] = isCandidate(place, isOutside) ? areas[p]! : 0;
          total += row[p]!;
        });
        if (total > 0) {
          for (let p = 0; p < row.length; p++) row[p]! /= total;
          break;
        }
      }
      // No place of that sort at all: leakage that stays inside goes to the rooms, where it is no loss.
    });
  });
  return { shares };
}

function addLeak(
  state: LeakState,
  isSupply: boolean,
  place: number,
  toZoneCfm: number,
  allCfm: number,
  outsideCfm: number,
): void {
  if (isSupply) {
    state.supplyToZone[place]! += toZoneCfm;
    state.supplyAllCfm += allCfm;
    state.supplyOutsideCfm += outsideCfm;
  } else {
    state.returnToZone[place]! += toZoneCfm;
    state.returnAllCfm += allCfm;
    state.returnOutsideCfm += outsideCfm;
  }
}

/** Static pressures that drive the leaks, by system. */
export interface PlenumPressures {
  readonly supplyPa: Float64Array;
  readonly returnPa: Float64Array;
}

/**
 * Turns leakage at 25 Pa into leakage while the system runs, by system, side and place.
 * In a place outside the house's pressure boundary the part that reaches outside counts; in a place inside it all of
 * it counts, and regain gives back what comes back: never both (METHODS “which leakage goes where”). Allocates nothing.
 */
export function fillOperatingLeaks({
  house,
  state,
  unfound,
  pressures,
  parameters,
}: {
  house: HouseModel;
  state: HouseState;
  unfound: UnfoundShares;
  pressures: PlenumPressures;
  parameters: Float64Array;
}): void {
  const { places, sites, systems, groups } = house;
  for (let s = 0; s < systems.length; s++) clearLeakState(state.systems[s]!.leaks);
  for (let i = 0; i < sites.length; i++) {
    const site = sites[i]!;
    const place = places[site.placeIndex]!;
    const isSupply = site.side === "supply";
    const plenumPa = (isSupply ? pressures.supplyPa : pressures.returnPa)[site.systemIndex]!;
    const operating =
      parameters[systems[site.systemIndex]!.modelFactorAt]! *
      flowAtPressure(
        state.siteCfm25[i]!,
        REFERENCE_PA,
        plenumPa * parameters[site.pressureFractionAt]!,
        DUCT_LEAK_EXPONENT.value,
      );
    state.siteOperatingCfm[i] = operating;
    const outside = operating * parameters[place.toOutsideShareAt]!;
    addLeak(
      state.systems[site.systemIndex]!.leaks,
      isSupply,
      site.placeIndex,
      place.isInsideBoundary ? operating : outside,
      operating,
      outside,
    );
  }
  for (let g = 0; g < groups.length; g++) {
    const { systemIndexes } = groups[g]!;
    let served = 0;
    for (let k = 0; k < systemIndexes.length; k++) served += systems[systemIndexes[k]!]!.servedShare;
    for (let c = 0; c < CELLS.length; c++) {
      const cell = CELLS[c]!;
      const cfm25 = state.cellCfm25[g]![c]!;
      if (cfm25 === 0) continue;
      const isSupply = cell.side === "supply";
      for (let k = 0; k < systemIndexes.length; k++) {
        const s = systemIndexes[k]!;
        const plenumPa = (isSupply ? pressures.supplyPa : pressures.returnPa)[s]!;
        const part = (cfm25 * systems[s]!.servedShare) / served;
        const operating =
          parameters[systems[s]!.modelFactorAt]! *
          flowAtPressure(part, REFERENCE_PA, plenumPa * systems[s]!.unfoundPressureFraction, DUCT_LEAK_EXPONENT.value);
        const { leaks } = state.systems[s]!;
        const row = (s * CELLS.length + c) * places.length;
        for (let p = 0; p < places.length; p++) {
          const share = unfound.shares[row + p]!;
          if (share > 0) addLeak(leaks, isSupply, p, operating * share, 0, 0);
        }
        addLeak(leaks, isSupply, 0, 0, operating, cell.isOutside ? operating : 0);
      }
    }
  }
}
