import type { AssumptionEffect } from "#lib/estimate/assumption-effects.ts";
import { formatUsd } from "#lib/units/format.ts";

/** The two ends in dollars; undefined where nobody would see a difference. */
export function effectRange({ lowUsdPerYear, highUsdPerYear }: AssumptionEffect): string | undefined {
  const [low, high] = [formatUsd(lowUsdPerYear), formatUsd(highUsdPerYear)];
  return low === high ? undefined : `${low} to ${high}`;
}

/** What an assumed value does to the answer, in a sentence. */
export function effectWords(effect: AssumptionEffect): string {
  const range = effectRange(effect);
  return range ? `Yearly dollars: ${range}.` : "It hardly moves the dollars.";
}
