import { InputProblem } from "#lib/errors/input-problem.ts";
import { findDescent } from "./find-descent.ts";
import { type LeakSide, type MeasurementName, QUARTERS, seenShare } from "./measurement-rows.ts";

/** The exact measurements cannot hold together, or numbers that are none came in. */
export class ReconciliationFailed extends InputProblem {
  constructor(detail: string) {
    super("outside-range", [
      {
        pointer: "#/measurements",
        detail,
        fix: "Give each measurement its doubt, or leave out the one that the others contradict.",
        code: "not-solved",
      },
    ]);
    this.name = "ReconciliationFailed";
  }
}

/**
 * A reconciliation of fixed form, to be solved many times. Fill the inputs, call `solve`, read the outputs: nothing is
 * allocated. Leaks are the sites in their order, then the four quarters not yet found in the order of `QUARTERS`.
 */
export interface Reconciler {
  /** In: by leak; the quarters' priors are 0 unless they are drawn, their shares are fixed. */
  readonly priorsCfm25: Float64Array;
  readonly spreadsCfm25: Float64Array;
  readonly toOutsideShares: Float64Array;
  /** In: by measurement. A standard uncertainty of 0 is an equality. */
  readonly measuredCfm25: Float64Array;
  readonly standardUncertaintiesCfm25: Float64Array;
  /** Out: by leak. */
  readonly leaksCfm25: Float64Array;
  /** Out: by measurement. */
  readonly fittedCfm25: Float64Array;
  solve(): void;
}

/** Two or three steps are usual; several exact measurements that leave little room take hundreds. */
const MOST_STEPS = 2000;
const MOST_LENGTHS = 60;
/** Of the largest measurement: what is sought, and what is promised where rounding leaves no more. */
const TOLERANCE_RATIO = 1e-11;
const PROMISED_RATIO = 1e-9;
/** No gauge reads so little: below it nothing needs to be met any closer. */
const TOLERANCE_CFM = 1e-12;
const ROUNDING_RATIO = 1e-14;
/**
 * Minimize Σ((x − p)/s)² + Σ((a·x − m)/u)² over x ≥ 0, by its dual: x(λ) = max(0, p + s²·Aᵀλ), and the λ at which
 * A·x(λ) + u²·λ = m, one number for each measurement. Semismooth Newton with a line search on the convex dual
 * function, from λ = 0, so that the answer depends on the inputs alone. Source: own-method; the dual is derived.
 * `solve` throws ReconciliationFailed when the steps run out: exact measurements that contradict each other.
 */
export function createReconciler({
  sides,
  measurements,
}: {
  /** Of the sites. */
  sides: readonly LeakSide[];
  measurements: readonly MeasurementName[];
}): Reconciler {
  const leakSides = [...sides, ...QUARTERS.map((quarter) => quarter.side)];
  const leakCount = leakSides.length;
  const count = measurements.length;
  const priorsCfm25 = new Float64Array(leakCount);
  const spreadsCfm25 = new Float64Array(leakCount);
  const toOutsideShares = new Float64Array(leakCount);
  QUARTERS.forEach((quarter, i) => {
    toOutsideShares[sides.length + i] = quarter.outside ? 1 : 0;
  });
  const measuredCfm25 = new Float64Array(count);
  const standardUncertaintiesCfm25 = new Float64Array(count);
  const leaksCfm25 = new Float64Array(leakCount);
  const fittedCfm25 = new Float64Array(count);

  const rows = new Float64Array(count * leakCount);
  /** Leaks before they are held at 0. */
  const freeLeaks = new Float64Array(leakCount);
  const multipliers = new Float64Array(count);
  const tried = new Float64Array(count);
  const misses = new Float64Array(count);
  const step = new Float64Array(count);
  const matrix = new Float64Array(count * count);
  /** Curvature of the dual along each multiplier, were no leak held at 0. */
  const fullCurvatures = new Float64Array(count);

  /** Size of the terms that the dual is the small difference of. */
  let dualSize = 0;

  function fillRows(): void {
    for (let k = 0; k < count; k += 1) {
      let curvature = standardUncertaintiesCfm25[k]! * standardUncertaintiesCfm25[k]!;
      for (let i = 0; i < leakCount; i += 1) {
        const seen = seenShare(measurements[k]!, leakSides[i]!, toOutsideShares[i]!);
        rows[k * leakCount + i] = seen;
        curvature += seen * seen * spreadsCfm25[i]! * spreadsCfm25[i]!;
      }
      fullCurvatures[k] = curvature;
    }
  }

  /** Leaks, fitted values and misses at λ; returns the dual function, of which the misses are the gradient. */
  function evaluate(lambda: Float64Array): number {
    let dual = 0;
    dualSize = 0;
    fittedCfm25.fill(0);
    for (let i = 0; i < leakCount; i += 1) {
      let pull = 0;
      for (let k = 0; k < count; k += 1) pull += rows[k * leakCount + i]! * lambda[k]!;
      const prior = priorsCfm25[i]!;
      const variance = spreadsCfm25[i]! * spreadsCfm25[i]!;
      const free = prior + variance * pull;
      const leak = Math.max(0, free);
      freeLeaks[i] = free;
      leaksCfm25[i] = leak;
      if (leak > 0) {
        dual += pull * (prior + 0.5 * variance * pull);
        for (let k = 0; k < count; k += 1) fittedCfm25[k]! += rows[k * leakCount + i]! * leak;
      } else if (variance > 0) dual -= (0.5 * prior * prior) / variance;
    }
    for (let k = 0; k < count; k += 1) {
      const variance = standardUncertaintiesCfm25[k]! * standardUncertaintiesCfm25[k]!;
      dual += lambda[k]! * (0.5 * variance * lambda[k]! - measuredCfm25[k]!);
      dualSize += Math.abs(lambda[k]!) * measuredCfm25[k]!;
      misses[k] = fittedCfm25[k]! + variance * lambda[k]! - measuredCfm25[k]!;
    }
    return dual;
  }

  /** The next step: Newton's, (A·D·S·Aᵀ + U)·step = −misses with D the leaks that are not held at 0. */
  function findStep(): void {
    matrix.fill(0);
    for (let i = 0; i < leakCount; i += 1) {
      if (freeLeaks[i]! < 0) continue;
      const variance = spreadsCfm25[i]! * spreadsCfm25[i]!;
      for (let k = 0; k < count; k += 1) {
        const weighted = rows[k * leakCount + i]! * variance;
        if (weighted === 0) continue;
        for (let j = 0; j <= k; j += 1) matrix[k * count + j]! += weighted * rows[j * leakCount + i]!;
      }
    }
    for (let k = 0; k < count; k += 1) {
      matrix[k * count + k]! += standardUncertaintiesCfm25[k]! * standardUncertaintiesCfm25[k]!;
    }
    findDescent(matrix, misses, fullCurvatures, tolerance(TOLERANCE_RATIO), step);
  }

  function tolerance(ratio: number): number {
    let largest = 0;
    for (let k = 0; k < count; k += 1) largest = Math.max(largest, Math.abs(measuredCfm25[k]!));
    return Math.max(ratio * largest, TOLERANCE_CFM);
  }

  function isSolved(ratio: number): boolean {
    const allowed = tolerance(ratio);
    for (let k = 0; k < count; k += 1) if (!(Math.abs(misses[k]!) <= allowed)) return false;
    return true;
  }

  function evaluateAt(length: number): number {
    for (let k = 0; k < count; k += 1) tried[k] = multipliers[k]! + length * step[k]!;
    return evaluate(tried);
  }

  function slopeAlongStep(): number {
    let slope = 0;
    for (let k = 0; k < count; k += 1) slope += misses[k]! * step[k]!;
    return slope;
  }

  /** Armijo's rule; what rounding alone does to the dual is let pass. */
  function isLower(next: number, dual: number, promised: number): boolean {
    return next <= dual + 1e-4 * promised + ROUNDING_RATIO * (Math.abs(dual) + dualSize);
  }

  function solve(): void {
    fillRows();
    multipliers.fill(0);
    let dual = evaluate(multipliers);
    for (let round = 0; round < MOST_STEPS; round += 1) {
      if (isSolved(TOLERANCE_RATIO)) return;
      findStep();
      const descent = slopeAlongStep();
      let length = 1;
      let next = evaluateAt(length);
      for (let i = 0; i < MOST_LENGTHS && !isLower(next, dual, length * descent); i += 1) {
        length /= 2;
        next = evaluateAt(length);
      }
      // Where every leak that could answer is held at 0, the dual falls along a straight line: go on to its end.
      for (let i = 0; i < MOST_LENGTHS && slopeAlongStep() < 0.5 * descent; i += 1) {
        const further = evaluateAt(2 * length);
        if (!isLower(further, dual, 2 * length * descent)) {
          next = evaluateAt(length);
          break;
        }
        length *= 2;
        next = further;
      }
      dual = next;
      multipliers.set(tried);
    }
    if (!isSolved(PROMISED_RATIO)) throw new ReconciliationFailed("The measurements could not be met");
  }

  return {
    priorsCfm25,
    spreadsCfm25,
    toOutsideShares,
    measuredCfm25,
    standardUncertaintiesCfm25,
    leaksCfm25,
    fittedCfm25,
    solve,
  };
}
