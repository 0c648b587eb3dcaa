import type { Ratio } from "#lib/units/quantity.ts";

/**
 * Power law that keeps the direction of the flow: s(z) = sign(z)·|z|^n, z and s without unit. Unguarded.
 * Source: derived (a leak works alike in both directions).
 */
export function signedPower(base: Ratio, exponent: Ratio): Ratio {
  return base < 0 ? -((-base) ** exponent) : base ** exponent;
}
