import type { Cfm, Pascals, Ratio } from "#lib/units/quantity.ts";

/** A hole, a register or a piece of duct: q = C·sign(ΔP)|ΔP|^n, from → to. C in cfm/Pa^n. */
export interface LeakLink {
  kind: "leak";
  id: string;
  from: string;
  to: string;
  coefficient: number;
  exponent: Ratio;
}

/** A fan whose flow falls in a straight line with the pressure it builds: q = Q₀ − slope·(p_to − p_from). */
export interface CurveFanLink {
  kind: "curve-fan";
  id: string;
  from: string;
  to: string;
  flowAtZeroCfm: Cfm;
  /** 0: the same flow at any pressure. */
  slopeCfmPerPa: number;
}

/** A fan that is turned up or down until one gauge channel shows its target: p_signal − p_reference = target. */
export interface HoldingFanLink {
  kind: "holding-fan";
  id: string;
  from: string;
  to: string;
  signal: string;
  reference: string;
  targetPa: Pascals;
}

export type FlowLink = LeakLink | CurveFanLink | HoldingFanLink;

/** Nodes whose pressure is given (outside at 0, faces in the wind), and links; every other node named is to be found. */
export interface FlowNetwork {
  fixedPressuresPa: Readonly<Record<string, Pascals>>;
  links: readonly FlowLink[];
}

export interface NetworkSolution {
  /** By node, with reference to the air outside. */
  pressuresPa: Readonly<Record<string, Pascals>>;
  /** By link, positive from → to. */
  flowsCfm: Readonly<Record<string, Cfm>>;
  iterationCount: number;
  /** The largest flow that any free node gains or loses: the proof that air is neither made nor lost. */
  largestImbalanceCfm: Cfm;
}

/** Below this pressure a leak turns laminar, so that its slope stays finite. Source: practice. */
export const LAMINAR_BELOW_PA = 0.01;

/**
 * Flow through a leak and its slope, unguarded and positional for the inner loop.
 * q = C·sign(ΔP)|ΔP|^n; below ε = 0.01 Pa the odd cubic C·ε^n·((3 − n)x − (1 − n)x³)/2, x = ΔP/ε, which meets the power
 * law in value and slope and is straight at zero. Source: astm-e779 (power law); the cubic: derived.
 */
export function leakFlow(link: LeakLink, differencePa: Pascals): Cfm {
  const { coefficient, exponent } = link;
  const size = Math.abs(differencePa);
  if (size > LAMINAR_BELOW_PA) return Math.sign(differencePa) * coefficient * size ** exponent;
  const x = differencePa / LAMINAR_BELOW_PA;
  return (coefficient * LAMINAR_BELOW_PA ** exponent * ((3 - exponent) * x - (1 - exponent) * x ** 3)) / 2;
}

/** Derivative of `leakFlow` by the pressure difference, in cfm/Pa. */
export function leakSlope(link: LeakLink, differencePa: Pascals): number {
  const { coefficient, exponent } = link;
  const size = Math.abs(differencePa);
  if (size > LAMINAR_BELOW_PA) return exponent * coefficient * size ** (exponent - 1);
  const x = differencePa / LAMINAR_BELOW_PA;
  return (coefficient * LAMINAR_BELOW_PA ** (exponent - 1) * (3 - exponent - 3 * (1 - exponent) * x ** 2)) / 2;
}
