/** The ends do not bracket a crossing, or a value is no number. */
export class RootNotFound extends Error {
  override readonly name = "RootNotFound";
}

/** Well above the 70 or so that a bisection every third step needs for 1e-12 of a wide interval. */
const MOST_STEPS = 200;

/**
 * Where a continuous function crosses zero between two ends at which its signs differ.
 * Secant steps with the Illinois rule, a bisection after two that moved the same end. Valid for any continuous
 * function; the crossing lies within `tolerance` of the answer. Source: derived (standard numerical method). Left
 * out: further crossings between the ends.
 * @throws RootNotFound when the ends do not bracket a crossing, a value is not a number, or the steps run out.
 */
export function findRoot({
  valueAt,
  low,
  high,
  tolerance,
}: {
  valueAt: (x: number) => number;
  low: number;
  high: number;
  tolerance: number;
}): number {
  let opposite = low;
  let newest = high;
  let valueOpposite = valueAt(opposite);
  let valueNewest = valueAt(newest);
  if (valueOpposite === 0) return opposite;
  if (valueNewest === 0) return newest;
  // Signs, not products: a product of two tiny values would vanish.
  if (!(Math.sign(valueOpposite) * Math.sign(valueNewest) < 0)) {
    throw new RootNotFound(`No crossing between ${low} and ${high}`);
  }
  let moves = 0;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    if (Math.abs(newest - opposite) <= tolerance) return newest;
    const secant = newest - (valueNewest * (newest - opposite)) / (valueNewest - valueOpposite);
    const isInside = secant > Math.min(opposite, newest) && secant < Math.max(opposite, newest);
    const x = isInside && moves < 2 ? secant : (opposite + newest) / 2;
    const value = valueAt(x);
    if (Number.isNaN(value)) throw new RootNotFound(`No value at ${x}`);
    if (value === 0) return x;
    if (Math.sign(value) === Math.sign(valueNewest)) {
      valueOpposite /= 2;
      moves = moves < 2 ? moves + 1 : 0;
    } else {
      opposite = newest;
      valueOpposite = valueNewest;
      moves = 0;
    }
    newest = x;
    valueNewest = value;
  }
  throw new RootNotFound(`No crossing within ${tolerance} after ${MOST_STEPS} steps`);
}
