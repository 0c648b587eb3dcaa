import type { EngineChange } from "#lib/estimate/engine-history.ts";
import { formatNumber } from "#lib/units/format.ts";
import type { NumberDifference } from "./recompute-claim.ts";

type Touched = EngineChange["touches"][number];

/** Which part of the calculation a claimed number comes from, by the start of its path. */
const PARTS: readonly (readonly [RegExp, Touched])[] = [
  [/^(leakage|sites|verified)\//, "leakage"],
  [/^systems\//, "distribution"],
  [/^energy\//, "energy"],
  [/^savings\//, "savings"],
];
const DIGITS = 4;

/** A range alone may differ where the values do not. */
function partOf({ path, which }: NumberDifference): Touched | null {
  if (which !== "value") return "ranges";
  return PARTS.find(([start]) => start.test(path))?.[1] ?? null;
}

const told = (value: number | null): string =>
  value === null ? "nothing" : formatNumber(value, { significantDigits: DIGITS });

/**
 * Numbers that differ from those of an older engine, part by part: how many, the farthest with both its values, and which
 * versions since then changed that part. A part that no version changed is said to be so: there the claim itself is in
 * question, not the engine.
 */
export function explainDifferences(
  differences: readonly NumberDifference[],
  changes: readonly EngineChange[],
): string[] {
  const parts = [...new Set(differences.map(partOf))];
  return parts.map((part) => {
    const own = differences.filter((each) => partOf(each) === part);
    const farthest = own.reduce((most, each) => (each.relativeDifference > most.relativeDifference ? each : most));
    const by = changes.filter(({ touches }) => part !== null && touches.includes(part)).map(({ version }) => version);
    const { path, which, claimed, recomputed, relativeDifference } = farthest;
    const where = which === "value" ? path : `${path} ${which}`;
    const how = `${part ?? "other numbers"}: ${own.length} differ, the most ${where}, ${told(claimed)} → ${told(recomputed)} (${formatNumber(100 * relativeDifference, { significantDigits: 2 })} %)`;
    return `${how}, ${by.length > 0 ? `changed by engine ${by.join(", ")}` : "which no change of the engine since then explains"}`;
  });
}
