import { createDrawSource } from "#lib/numeric/create-draw-source.ts";
import type { Cfm, Share } from "#lib/units/quantity.ts";
import { type Reconciler, ReconciliationFailed } from "./create-reconciler.ts";
import type { MeasurementName } from "./measurement-rows.ts";

/** Exact measurements that force leaks to 0 leave rounding no room in a rare draw, which then counts for nothing. */
const MOST_UNSOLVED_SHARE = 0.1;

function isSolvable(reconciler: Reconciler): boolean {
  try {
    reconciler.solve();
    return true;
  } catch (thrown) {
    if (thrown instanceof ReconciliationFailed) return false;
    throw thrown;
  }
}

/**
 * How far a solved reconciliation moves when its priors and measurements are drawn anew within their doubts: root mean
 * square about the answer. Also the open measurement that the draws agree least on. The same seed gives the same
 * numbers. A covariance matrix would be wrong where a leak is held at 0. Source: own-method, in the manner of jcgm-101.
 */
export function perturbReconciliation({
  reconciler,
  open,
  openRows,
  draws,
  seed,
}: {
  /** Solved; its inputs are put back afterwards. */
  reconciler: Reconciler;
  open: readonly MeasurementName[];
  /** How much each open measurement sees of each leak. */
  openRows: readonly (readonly Share[])[];
  draws: number;
  seed: number;
}): {
  leaksCfm25: Float64Array;
  tellsMost: { name: MeasurementName; expectedCfm25: Cfm; standardUncertaintyCfm25: Cfm } | null;
} {
  const { priorsCfm25, spreadsCfm25, measuredCfm25, standardUncertaintiesCfm25, leaksCfm25 } = reconciler;
  const leakCount = priorsCfm25.length;
  const priors = Float64Array.from(priorsCfm25);
  const measured = Float64Array.from(measuredCfm25);
  const answer = Float64Array.from(leaksCfm25);
  const seenAt = (row: readonly Share[], leaks: Float64Array) =>
    row.reduce((sum, share, i) => sum + share * leaks[i]!, 0);
  const expected = openRows.map((row) => seenAt(row, answer));
  const leakSquares = new Float64Array(leakCount);
  const openSquares = new Float64Array(open.length);
  const normals = new Float64Array(leakCount + measured.length);
  const source = createDrawSource(seed);
  let unsolved = 0;
  for (let draw = 0; draw < draws; draw += 1) {
    source.fillNormals(draw, normals);
    for (let i = 0; i < leakCount; i += 1) priorsCfm25[i] = priors[i]! + spreadsCfm25[i]! * normals[i]!;
    for (let k = 0; k < measured.length; k += 1) {
      // Leakage below zero cannot be read.
      measuredCfm25[k] = Math.max(0, measured[k]! + standardUncertaintiesCfm25[k]! * normals[leakCount + k]!);
    }
    if (!isSolvable(reconciler)) {
      unsolved += 1;
      continue;
    }
    for (let i = 0; i < leakCount; i += 1) leakSquares[i]! += (leaksCfm25[i]! - answer[i]!) ** 2;
    openRows.forEach((row, j) => {
      openSquares[j]! += (seenAt(row, leaksCfm25) - expected[j]!) ** 2;
    });
  }
  priorsCfm25.set(priors);
  measuredCfm25.set(measured);
  reconciler.solve();
  if (unsolved > MOST_UNSOLVED_SHARE * draws) throw new ReconciliationFailed(`${unsolved} of ${draws} draws failed`);
  const rootMean = (squares: number) => Math.sqrt(squares / (draws - unsolved));
  const most = openSquares.indexOf(Math.max(...openSquares));
  return {
    leaksCfm25: leakSquares.map(rootMean),
    tellsMost:
      most < 0
        ? null
        : { name: open[most]!, expectedCfm25: expected[most]!, standardUncertaintyCfm25: rootMean(openSquares[most]!) },
  };
}
