import type { PlaceModel } from "../complete/complete-places.ts";
import type { ZoneCoefficients } from "./zone-coefficients.ts";

/** The surroundings of a side as one straight line: its places, weighted by what they do to that side. */
export interface PlaceMix {
  constant: number;
  outdoor: number;
  sun: number;
  ground: number;
  night: number;
  /** Share of the air around that carries outdoor moisture. */
  outdoorMoistureShare: number;
  /** Regain factor of the mix. */
  regainFactor: number;
}

export const createPlaceMix = (): PlaceMix => ({
  constant: 0,
  outdoor: 0,
  sun: 0,
  ground: 0,
  night: 0,
  outdoorMoistureShare: 0,
  regainFactor: 0,
});

export interface PlaceMixInput {
  /** One weight a place: conductance A/R for conduction, flow for leaks. */
  weights: Float64Array;
  zones: ZoneCoefficients;
  places: readonly PlaceModel[];
  parameters: Float64Array;
  /** Taken when nothing weighs. */
  indoorF: number;
}

/** Fills the mix and returns the sum of the weights. Allocates nothing. */
export function fillPlaceMix(mix: PlaceMix, { weights, zones, places, parameters, indoorF }: PlaceMixInput): number {
  let total = 0;
  let constant = 0;
  let outdoor = 0;
  let sun = 0;
  let ground = 0;
  let night = 0;
  let moisture = 0;
  let regain = 0;
  for (let p = 0; p < places.length; p++) {
    const weight = weights[p]!;
    if (weight === 0) continue;
    const place = places[p]!;
    total += weight;
    constant += weight * zones.constant[p]!;
    outdoor += weight * zones.outdoor[p]!;
    sun += weight * zones.sun[p]!;
    ground += weight * zones.ground[p]!;
    night += weight * zones.night[p]!;
    regain += weight * parameters[place.regainAt]!;
    if (place.moisture === "outdoor") moisture += weight;
  }
  const scale = total > 0 ? 1 / total : 0;
  mix.constant = total > 0 ? constant * scale : indoorF;
  mix.outdoor = outdoor * scale;
  mix.sun = sun * scale;
  mix.ground = ground * scale;
  mix.night = night * scale;
  mix.outdoorMoistureShare = moisture * scale;
  mix.regainFactor = regain * scale;
  return total;
}
