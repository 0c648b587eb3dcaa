import type { Cfm, Ratio, Share } from "#lib/units/quantity.ts";
import { createReconciler } from "./create-reconciler.ts";
import { exactConsequences } from "./exact-consequences.ts";
import { guardReconciliation } from "./guard-reconciliation.ts";
import { type LeakSide, MEASUREMENT_NAMES, type MeasurementName, QUARTERS, seenShare } from "./measurement-rows.ts";
import { perturbReconciliation } from "./perturb-reconciliation.ts";

export interface FoundLeak {
  id: string;
  side: LeakSide;
  toOutsideShare: Share;
  priorCfm25: Cfm;
  priorRelativeUncertainty: Ratio;
  priorAbsoluteUncertaintyCfm25?: Cfm;
}

export type LeakageMeasurements = Readonly<
  Partial<Record<MeasurementName, { cfm25: Cfm; standardUncertaintyCfm25: Cfm }>>
>;

export interface LeakageReconciliation {
  sites: readonly { id: string; cfm25: Cfm; toOutsideCfm25: Cfm; standardUncertaintyCfm25: Cfm }[];
  notYetFound: readonly { side: LeakSide; outside: boolean; cfm25: Cfm; standardUncertaintyCfm25: Cfm }[];
  measurements: readonly { name: MeasurementName; fittedCfm25: Cfm; surplusZ: number }[];
  /** The measurement not yet made whose outcome is the most open: it would tell most. Null when all are made. */
  tellsMost: { name: MeasurementName; expectedCfm25: Cfm; standardUncertaintyCfm25: Cfm } | null;
}

/** A found leak is never surer than this share of the largest measurement: gauges and eyes are not. */
export const SMALLEST_SPREAD_SHARE = 0.005;
export const CELL_VARIANCE_SHARE = {
  value: 0.25,
  unit: "share",
  source: { sourceId: "own-method" },
  reason: "Each quarter may hold up to about half of the largest measurement.",
} as const;

/** Doubt of a prior: s = max(rel·p, abs), at least 0.5 % of the largest measurement. */
export function priorSpread(leak: FoundLeak, largestCfm25: Cfm): Cfm {
  return Math.max(
    leak.priorRelativeUncertainty * leak.priorCfm25,
    leak.priorAbsoluteUncertaintyCfm25 ?? 0,
    SMALLEST_SPREAD_SHARE * largestCfm25,
  );
}

/**
 * Leaks by size that fit the measurements: found ones move as little as their doubt allows, and what they do not explain
 * goes to four quarters not yet found (supply or return, outside or inside).
 * Minimize Σ_found((x − p)/s)² + Σ_quarters(x/s_c)² + Σ_k((a_k·x − m_k)/u_k)², x ≥ 0; s = max(rel·p, abs), at least
 * 0.5 % of M; s_c = M·√w; M the largest measurement, else Σp; a: 1 (total), share (toOutside), the same on one side.
 * u = 0 is an equality. surplusZ = (Σ a·p − m)/√(Σ a²·s² + u²): large when found leaks add up to more than was measured.
 * Uncertainty by drawing priors and measurements anew and solving again, as the root mean square move. Source: own-method.
 * Left out: doubt of the shares to outside.
 * @throws InputProblem for values out of range and for equalities that cannot hold together, naming them.
 */
export function leakageReconciliation({
  measurements,
  sites,
  cellVarianceShare = CELL_VARIANCE_SHARE.value,
  draws = 400,
  seed = 1,
}: {
  measurements: LeakageMeasurements;
  sites: readonly FoundLeak[];
  cellVarianceShare?: Share;
  draws?: number;
  seed?: number;
}): LeakageReconciliation {
  guardReconciliation(measurements, sites, cellVarianceShare, draws);
  const names = MEASUREMENT_NAMES.filter((name) => measurements[name] !== undefined);
  // By id, so that the order in which leaks were entered changes nothing, not even the last digit.
  const sorted = [...sites].sort((a, b) => (a.id < b.id ? -1 : 1));
  // Nothing measured, or nothing but zeros: the found leaks set the scale.
  const largestCfm25 =
    Math.max(0, ...names.map((name) => measurements[name]!.cfm25)) ||
    sorted.reduce((sum, site) => sum + site.priorCfm25, 0);
  const exact = Object.fromEntries(
    names
      .filter((name) => measurements[name]!.standardUncertaintyCfm25 === 0)
      .map((name) => [name, measurements[name]!.cfm25]),
  );
  const { isForcedToZero, isRedundant } = exactConsequences(exact);
  const solved = names.filter((name) => !isRedundant(name));
  const reconciler = createReconciler({ sides: sorted.map((site) => site.side), measurements: solved });
  const spreads = sorted.map((site) => priorSpread(site, largestCfm25));
  const quarterSpread = largestCfm25 * Math.sqrt(cellVarianceShare);
  [...sorted, ...QUARTERS].forEach((leak, i) => {
    const isQuarter = "outside" in leak;
    const toOutsideShare = isQuarter ? (leak.outside ? 1 : 0) : leak.toOutsideShare;
    const isZero = isForcedToZero(leak.side, toOutsideShare);
    reconciler.toOutsideShares[i] = toOutsideShare;
    reconciler.priorsCfm25[i] = isZero || isQuarter ? 0 : leak.priorCfm25;
    reconciler.spreadsCfm25[i] = isZero ? 0 : isQuarter ? quarterSpread : spreads[i]!;
  });
  solved.forEach((name, k) => {
    reconciler.measuredCfm25[k] = measurements[name]!.cfm25;
    reconciler.standardUncertaintiesCfm25[k] = measurements[name]!.standardUncertaintyCfm25;
  });
  reconciler.solve();
  const leaks = Float64Array.from(reconciler.leaksCfm25);
  const open = MEASUREMENT_NAMES.filter((name) => !names.includes(name));
  const openRows = open.map((name) => rowOf(name, sorted));
  const spread = perturbReconciliation({ reconciler, open, openRows, draws, seed });
  const placeOf = new Map(sorted.map((site, i) => [site.id, i]));
  return {
    sites: sites.map((site) => {
      const i = placeOf.get(site.id)!;
      return {
        id: site.id,
        cfm25: leaks[i]!,
        toOutsideCfm25: leaks[i]! * site.toOutsideShare,
        standardUncertaintyCfm25: spread.leaksCfm25[i]!,
      };
    }),
    notYetFound: QUARTERS.map((quarter, j) => ({
      ...quarter,
      cfm25: leaks[sorted.length + j]!,
      standardUncertaintyCfm25: spread.leaksCfm25[sorted.length + j]!,
    })),
    measurements: names.map((name) => ({
      name,
      fittedCfm25: rowOf(name, sorted).reduce((sum, seen, i) => sum + seen * leaks[i]!, 0),
      surplusZ: surplusOf(name, measurements[name]!, sorted, spreads),
    })),
    tellsMost: spread.tellsMost,
  };
}

/** How much a measurement sees of each leak, sites first. */
function rowOf(name: MeasurementName, sites: readonly FoundLeak[]): Share[] {
  return [
    ...sites.map((site) => seenShare(name, site.side, site.toOutsideShare)),
    ...QUARTERS.map((quarter) => seenShare(name, quarter.side, quarter.outside ? 1 : 0)),
  ];
}

function surplusOf(
  name: MeasurementName,
  measurement: { cfm25: Cfm; standardUncertaintyCfm25: Cfm },
  sites: readonly FoundLeak[],
  spreads: readonly Cfm[],
): number {
  let surplusCfm25 = -measurement.cfm25;
  let variance = measurement.standardUncertaintyCfm25 ** 2;
  sites.forEach((site, i) => {
    const seen = seenShare(name, site.side, site.toOutsideShare);
    surplusCfm25 += seen * site.priorCfm25;
    variance += (seen * spreads[i]!) ** 2;
  });
  // Without a found leak there is nothing that could exceed an exact measurement.
  return variance > 0 ? surplusCfm25 / Math.sqrt(variance) : 0;
}
