import normalCdfOf from "@stdlib/stats-base-dists-normal-cdf";
import normalQuantileOf from "@stdlib/stats-base-dists-normal-quantile";
import studentTQuantileOf from "@stdlib/stats-base-dists-t-quantile";
import { refuse } from "#lib/errors/input-problem.ts";
import { requireAbove } from "#lib/errors/require-number.ts";

function requireInside(probability: number): void {
  if (probability > 0 && probability < 1) return;
  refuse({
    field: "probability",
    detail: `A probability must be above 0 and below 1, not ${probability}`,
    fix: "Enter a share, such as 0.95.",
  });
}

/** Probability that a standard normal number is at most z. Source: jcgm-106 §7, by the stdlib library. */
export function normalCdf(z: number): number {
  if (Number.isNaN(z)) refuse({ field: "z", detail: "z must be a number", fix: "Check the values it is made of." });
  return normalCdfOf(z, 0, 1);
}

/** The standard normal number that a probability lies below. @throws InputProblem outside 0 to 1, both excluded. */
export function normalQuantile(probability: number): number {
  requireInside(probability);
  return normalQuantileOf(probability, 0, 1);
}

/** Student's t that a probability lies below. @throws InputProblem outside 0 to 1 or without degrees of freedom. */
export function studentTQuantile({
  probability,
  degreesOfFreedom,
}: {
  probability: number;
  degreesOfFreedom: number;
}): number {
  requireInside(probability);
  requireAbove({ field: "degreesOfFreedom", label: "Degrees of freedom", value: degreesOfFreedom });
  return studentTQuantileOf(probability, degreesOfFreedom);
}
