import { refuse } from "#lib/errors/input-problem.ts";
import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { Ratio } from "#lib/units/quantity.ts";

/**
 * Efficiency over a season (or any set of conditions): all load over all output it takes.
 * η = Σ load/Σ(load/η_bin), so each bin counts by what it consumes. Valid for efficiencies above 0; only the ratios of
 * the loads matter. Source: derived (energy is additive). Left out: heat pumps, whose energy is no fixed multiple of the
 * output (see heat-pump-bin).
 * @throws InputProblem when there is no load, a load is below 0, or an efficiency is not above 0.
 */
export function seasonalEfficiency({ bins }: { bins: readonly { load: number; efficiency: Ratio }[] }): {
  efficiency: Ratio;
} {
  let load = 0;
  let output = 0;
  bins.forEach((bin, index) => {
    requireBetween({ field: `bins/${index}/load`, label: "Load", value: bin.load, low: 0, high: 1e15 });
    requireAbove({ field: `bins/${index}/efficiency`, label: "Efficiency", value: bin.efficiency });
    load += bin.load;
    output += bin.load / bin.efficiency;
  });
  if (!(load > 0)) {
    refuse({ field: "bins", detail: "The loads add up to 0", fix: "Give at least one bin with a load above 0." });
  }
  return { efficiency: load / output };
}
