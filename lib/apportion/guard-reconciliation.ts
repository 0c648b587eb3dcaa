import { InputProblem, refuse } from "#lib/errors/input-problem.ts";
import { requireBetween } from "#lib/errors/require-number.ts";
import type { Cfm, Share } from "#lib/units/quantity.ts";
import { contradictingMeasurements } from "./contradicting-measurements.ts";
import type { FoundLeak, LeakageMeasurements } from "./leakage-reconciliation.ts";
import { MEASUREMENT_NAMES, type MeasurementName } from "./measurement-rows.ts";

function requireWhole(field: string, label: string, value: number, low: number): void {
  if (Number.isInteger(value) && value >= low && value <= 100000) return;
  refuse({ field, detail: `${label} must be a whole number from ${low}, not ${value}`, fix: "Enter a whole number." });
}

/** @throws InputProblem for values out of range and for exact measurements that contradict each other, naming them. */
export function guardReconciliation(
  measurements: LeakageMeasurements,
  sites: readonly FoundLeak[],
  cellVarianceShare: Share,
  draws: number,
): void {
  requireWhole("draws", "Draws", draws, 10);
  requireBetween({ field: "cellVarianceShare", label: "Variance share", value: cellVarianceShare, low: 1e-4, high: 4 });
  const exact: Partial<Record<MeasurementName, Cfm>> = {};
  for (const name of MEASUREMENT_NAMES) {
    const measurement = measurements[name];
    if (measurement === undefined) continue;
    const { cfm25, standardUncertaintyCfm25 } = measurement;
    const field = `measurements/${name}`;
    const size = { unit: "cfm", low: 0, high: 20000 } as const;
    requireBetween({ field: `${field}/cfm25`, label: "Measured leakage", value: cfm25, ...size });
    requireBetween({
      field: `${field}/standardUncertaintyCfm25`,
      label: "Standard uncertainty",
      value: standardUncertaintyCfm25,
      ...size,
    });
    if (standardUncertaintyCfm25 === 0) exact[name] = cfm25;
  }
  const ids = new Set<string>();
  sites.forEach((site, i) => {
    const field = `sites/${i}`;
    if (ids.size === ids.add(site.id).size) {
      refuse({ field: `${field}/id`, detail: `The id ${site.id} is used twice`, fix: "Give each leak its own id." });
    }
    const share = { low: 0, high: 1 } as const;
    const size = { unit: "cfm", low: 0, high: 20000 } as const;
    requireBetween({
      field: `${field}/toOutsideShare`,
      label: "Share to outside",
      value: site.toOutsideShare,
      ...share,
    });
    requireBetween({ field: `${field}/priorCfm25`, label: "First guess", value: site.priorCfm25, ...size });
    requireBetween({
      field: `${field}/priorRelativeUncertainty`,
      label: "Doubt of the first guess",
      value: site.priorRelativeUncertainty,
      low: 0,
      high: 10,
    });
    requireBetween({
      field: `${field}/priorAbsoluteUncertaintyCfm25`,
      label: "Doubt of the first guess",
      value: site.priorAbsoluteUncertaintyCfm25 ?? 0,
      ...size,
    });
  });
  const contradicting = contradictingMeasurements(exact);
  if (contradicting.length === 0) return;
  throw new InputProblem(
    "outside-range",
    contradicting.map((name) => ({
      pointer: `#/measurements/${name}`,
      code: "contradiction",
      detail: `${contradicting.map((each) => `${each} ${exact[each]} cfm`).join(", ")} cannot all hold at once`,
      fix: "Correct one of them, or give each its standard uncertainty.",
    })),
  );
}
