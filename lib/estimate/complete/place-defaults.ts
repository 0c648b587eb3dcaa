import type { PlaceKind } from "#lib/job/place.ts";

/** How a kind of place behaves around a duct, until something is measured. */
export interface PlaceDefaults {
  /** Inside the house's pressure boundary: leaks there count in full, and come back by the regain factor. */
  isInsideBoundary: boolean;
  /** Share of a leak there that a to-outside test sees. */
  toOutsideShare: number;
  toOutsideShareDoubt: number;
  /** Unconditioned-space factor: 0 as the house, 1 as its surroundings. The attic has its own energy balance instead. */
  unconditionedFactor: number;
  unconditionedFactorDoubt: number;
  /**
   * The place is between rooms and surroundings and little else: then what comes back of a loss there, F, and how far the
   * place follows its surroundings, b, are two sides of one steady balance, F = UA_rooms/ΣUA and b = 1 − F.
   */
  isFactorByRegain: boolean;
  /** How much of its surroundings is ground; more of it where the walls above ground are insulated. */
  groundShare: number;
  groundShareBehindInsulatedWalls: number;
}

const inside = { isInsideBoundary: true, isFactorByRegain: false } as const;
const outside = {
  isInsideBoundary: false,
  isFactorByRegain: false,
  toOutsideShare: 1,
  toOutsideShareDoubt: 0,
} as const;
const ground = (share: number, behindInsulatedWalls = share) => ({
  groundShare: share,
  groundShareBehindInsulatedWalls: behindInsulatedWalls,
});

/**
 * Form of the unconditioned-space factors of ISO 13789 and EN 12831, from memory, and common practice (sources
 * iso-13789, practice). Shares of places inside the boundary are assumptions to measure away with a zone pressure.
 */
export const PLACE_DEFAULTS: Readonly<Record<PlaceKind, PlaceDefaults>> = {
  conditioned: {
    ...inside,
    toOutsideShare: 0,
    toOutsideShareDoubt: 0,
    unconditionedFactor: 0,
    unconditionedFactorDoubt: 0,
    ...ground(0),
  },
  attic: { ...outside, unconditionedFactor: 1, unconditionedFactorDoubt: 0.08, ...ground(0) },
  "vented-crawlspace": {
    ...outside,
    isFactorByRegain: true,
    unconditionedFactor: 0.75,
    unconditionedFactorDoubt: 0.12,
    ...ground(0.3),
  },
  "unvented-crawlspace": {
    ...inside,
    toOutsideShare: 0.4,
    toOutsideShareDoubt: 0.2,
    isFactorByRegain: true,
    unconditionedFactor: 0.5,
    unconditionedFactorDoubt: 0.15,
    ...ground(0.4, 0.65),
  },
  basement: {
    ...inside,
    toOutsideShare: 0.3,
    toOutsideShareDoubt: 0.15,
    isFactorByRegain: true,
    unconditionedFactor: 0.4,
    unconditionedFactorDoubt: 0.15,
    ...ground(0.4, 0.65),
  },
  garage: {
    ...outside,
    isFactorByRegain: true,
    unconditionedFactor: 0.75,
    unconditionedFactorDoubt: 0.12,
    ...ground(0.1),
  },
  belly: { ...outside, unconditionedFactor: 0.5, unconditionedFactorDoubt: 0.15, ...ground(0.15) },
  "joist-space": {
    ...inside,
    toOutsideShare: 0.2,
    toOutsideShareDoubt: 0.12,
    unconditionedFactor: 0.1,
    unconditionedFactorDoubt: 0.07,
    ...ground(0),
  },
  "below-slab": {
    ...inside,
    toOutsideShare: 0.5,
    toOutsideShareDoubt: 0.2,
    unconditionedFactor: 0.7,
    unconditionedFactorDoubt: 0.15,
    ...ground(0.8),
  },
  outside: { ...outside, unconditionedFactor: 1, unconditionedFactorDoubt: 0.02, ...ground(0) },
};
