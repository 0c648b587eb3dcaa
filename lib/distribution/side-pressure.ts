import type { Cfm, Ratio } from "#lib/units/quantity.ts";

/** Newton on a rising convex function: after the first step it closes in from above, quadratically. */
const MOST_STEPS = 60;
const SMALL_STEP = 1e-13;

/**
 * v = √(P/P₀) at which one side of a duct system passes a flow: A·v + L·v^(2n) = Q, A the flow through its registers
 * and L its leaks, both at P₀. Unguarded and positional, for inner loops: A and Q above 0, L from 0, n from 0.5.
 * Source: derived.
 */
export function rootPressureRatio(registerCfm: Cfm, leakageCfm: Cfm, flowCfm: Cfm, exponent: Ratio): Ratio {
  let v = flowCfm / (registerCfm + leakageCfm);
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const leak = leakageCfm * v ** (2 * exponent);
    const move = (registerCfm * v + leak - flowCfm) / (registerCfm + (2 * exponent * leak) / v);
    v -= move;
    if (Math.abs(move) <= SMALL_STEP * v) return v;
  }
  throw new Error(`Static pressure did not settle at ${flowCfm} cfm`);
}

/** How P/P₀ of the side rises with its flow, at v. */
export function pressureRatioSlope(registerCfm: Cfm, leakageCfm: Cfm, v: Ratio, exponent: Ratio): number {
  return (2 * v) / (registerCfm + 2 * exponent * leakageCfm * v ** (2 * exponent - 1));
}

/** What the leaks of the side pass at v. */
export function leakageAtRatio(leakageCfm: Cfm, v: Ratio, exponent: Ratio): Cfm {
  return leakageCfm * v ** (2 * exponent);
}
