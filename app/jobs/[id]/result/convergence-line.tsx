import type { Result } from "#lib/job/result/result-schema.ts";
import { formatUsd } from "#lib/units/format.ts";

/** How much the range of the yearly saving would move with other draws. */
export function ConvergenceLine({ result: { convergence, draws } }: { result: Pick<Result, "convergence" | "draws"> }) {
  if (!convergence) return null;
  const { p10StandardErrorUsdPerYear, p50StandardErrorUsdPerYear, p90StandardErrorUsdPerYear } = convergence;
  return (
    <p>
      Other draws would move the yearly saving by about {formatUsd(p50StandardErrorUsdPerYear)} in the middle, by{" "}
      {formatUsd(p10StandardErrorUsdPerYear)} at the low end of its range and by {formatUsd(p90StandardErrorUsdPerYear)}{" "}
      at the high end: so much is left to chance with {draws.toLocaleString("en-US")} draws.
    </p>
  );
}
