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
  /** How much of its surroundings is ground. */
  groundShare: number;
}

const inside = { isInsideBoundary: true } as const;
const outside = { isInsideBoundary: false, toOutsideShare: 1, toOutsideShareDoubt: 0 } as const;

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
    groundShare: 0,
  },
  attic: { ...outside, unconditionedFactor: 1, unconditionedFactorDoubt: 0.08, groundShare: 0 },
  "vented-crawlspace": { ...outside, unconditionedFactor: 0.75, unconditionedFactorDoubt: 0.12, groundShare: 0.35 },
  "unvented-crawlspace": {
    ...inside,
    toOutsideShare: 0.4,
    toOutsideShareDoubt: 0.2,
    unconditionedFactor: 0.5,
    unconditionedFactorDoubt: 0.15,
    groundShare: 0.6,
  },
  basement: {
    ...inside,
    toOutsideShare: 0.3,
    toOutsideShareDoubt: 0.15,
    unconditionedFactor: 0.4,
    unconditionedFactorDoubt: 0.15,
    groundShare: 0.6,
  },
  garage: { ...outside, unconditionedFactor: 0.75, unconditionedFactorDoubt: 0.12, groundShare: 0.15 },
  belly: { ...outside, unconditionedFactor: 0.5, unconditionedFactorDoubt: 0.15, groundShare: 0.15 },
  "joist-space": {
    ...inside,
    toOutsideShare: 0.2,
    toOutsideShareDoubt: 0.12,
    unconditionedFactor: 0.1,
    unconditionedFactorDoubt: 0.07,
    groundShare: 0,
  },
  "below-slab": {
    ...inside,
    toOutsideShare: 0.5,
    toOutsideShareDoubt: 0.2,
    unconditionedFactor: 0.7,
    unconditionedFactorDoubt: 0.15,
    groundShare: 0.8,
  },
  outside: { ...outside, unconditionedFactor: 1, unconditionedFactorDoubt: 0.02, groundShare: 0 },
};
