import type { Cfm } from "#lib/units/quantity.ts";
import { createReconciler, ReconciliationFailed } from "./create-reconciler.ts";
import { MEASUREMENT_NAMES, type MeasurementName } from "./measurement-rows.ts";

/** An exact measurement, softened to this share of the largest, meets consistent partners far better than this. */
const SOFT_RATIO = 1e-4;
const MISS_RATIO = 1e-6;

/**
 * The exact measurements (standard uncertainty 0) that cannot hold together, or none. Any leaks add up as four quarters
 * would, so the quarters alone decide. Source: own-method.
 */
export function contradictingMeasurements(exact: Readonly<Partial<Record<MeasurementName, Cfm>>>): MeasurementName[] {
  const names = MEASUREMENT_NAMES.filter((name) => exact[name] !== undefined);
  if (names.length < 2) return [];
  const isHeldTogether = (subset: readonly MeasurementName[]): boolean => {
    const largest = Math.max(...subset.map((name) => exact[name]!), Number.MIN_VALUE);
    const quarters = createReconciler({ sides: [], measurements: subset });
    quarters.spreadsCfm25.fill(largest);
    subset.forEach((name, k) => {
      quarters.measuredCfm25[k] = exact[name]!;
      quarters.standardUncertaintiesCfm25[k] = SOFT_RATIO * largest;
    });
    try {
      quarters.solve();
    } catch (thrown) {
      if (thrown instanceof ReconciliationFailed) return false;
      throw thrown;
    }
    return subset.every((name, k) => Math.abs(quarters.fittedCfm25[k]! - exact[name]!) <= MISS_RATIO * largest);
  };
  if (isHeldTogether(names)) return [];
  // Leave out whatever is not needed for the contradiction, so that only the culprits are named.
  return names.reduce<MeasurementName[]>((kept, name) => {
    const without = kept.filter((each) => each !== name);
    return without.length >= 2 && !isHeldTogether(without) ? without : kept;
  }, names);
}
