import type { Cfm, Pascals, Ratio } from "#lib/units/quantity.ts";
import { type DeltaQPoint, returnResponse, supplyResponse } from "./delta-q-model.ts";

/** Pressures of running ducts, with room to spare. Source: practice. */
export const LOWEST_PRESSURE_PA = 2;
export const HIGHEST_PRESSURE_PA = 600;
const GRID_COUNT = 64;
const MOST_VALLEYS = 3;
const MOST_MOVES = 600;
const SMALLEST_STEP = 1e-13;
const COMPASS = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [-1, -1],
  [1, -1],
  [-1, 1],
] as const;

/** At one pair of pressures the leaks follow by linear least squares: the best ones, and how freely they may move. */
export interface DeltaQValley {
  supplyPressurePa: Pascals;
  returnPressurePa: Pascals;
  supplyLeakageCfm: Cfm;
  returnLeakageCfm: Cfm;
  sumOfSquares: number;
  /** Variances of the leaks at these pressures, over the variance of the readings. */
  supplyVarianceRatio: number;
  returnVarianceRatio: number;
}

/** What the sum of squares is at every pair of pressures, leaks at their best: its valleys show what is not told. */
export interface DeltaQProfile {
  cells: readonly DeltaQValley[];
  /** Where it is lower than at all neighbors, the deepest first, at most three. */
  valleys: readonly DeltaQValley[];
}

const gridPressures = Array.from(
  { length: GRID_COUNT },
  (_, i) => LOWEST_PRESSURE_PA * (HIGHEST_PRESSURE_PA / LOWEST_PRESSURE_PA) ** (i / (GRID_COUNT - 1)),
);

/**
 * Goes through all pairs of pressures on a logarithmic grid. For given pressures the Delta-Q curve is linear in the two
 * leaks, so each pair takes a few sums. Source: derived (variable projection).
 */
export function profileDeltaQ(points: readonly DeltaQPoint[], exponent: Ratio): DeltaQProfile {
  const supplies = gridPressures.map((pressurePa) => sideAt(points, supplyResponse, pressurePa, exponent));
  const returns = gridPressures.map((pressurePa) => sideAt(points, returnResponse, pressurePa, exponent));
  const flowSquare = points.reduce((sum, point) => sum + point.deltaFlowCfm ** 2, 0);
  const cells = supplies.flatMap((supply) => returns.map((back) => fitLeaks(supply, back, flowSquare)));
  const valleys = valleysOf(cells).map((cell) => descend(cell, points, exponent, flowSquare));
  return { cells, valleys: valleys.sort((a, b) => a.sumOfSquares - b.sumOfSquares) };
}

/** One side's response at a pressure, with the sums that the fit of the leaks needs. */
interface Side {
  pressurePa: Pascals;
  column: readonly number[];
  square: number;
  flow: number;
}

const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, each, i) => sum + each * b[i]!, 0);

function sideAt(
  points: readonly DeltaQPoint[],
  response: typeof supplyResponse,
  pressurePa: Pascals,
  exponent: Ratio,
): Side {
  const column = points.map((point) => response(point.envelopePressurePa, pressurePa, exponent));
  const flow = points.reduce((sum, point, i) => sum + point.deltaFlowCfm * column[i]!, 0);
  return { pressurePa, column, square: dot(column, column), flow };
}

/** The leaks that fit best at a pair of pressures, by the normal equations of two unknowns, held at 0 from below. */
function fitLeaks(supply: Side, back: Side, flowSquare: number): DeltaQValley {
  const cross = dot(supply.column, back.column);
  const determinant = supply.square * back.square - cross * cross;
  const isTold = determinant > 1e-9 * supply.square * back.square;
  let supplyLeakageCfm = isTold ? (supply.flow * back.square - back.flow * cross) / determinant : 0;
  let returnLeakageCfm = isTold ? (back.flow * supply.square - supply.flow * cross) / determinant : 0;
  if (!(supplyLeakageCfm > 0)) [supplyLeakageCfm, returnLeakageCfm] = [0, Math.max(0, back.flow / back.square)];
  else if (!(returnLeakageCfm > 0))
    [supplyLeakageCfm, returnLeakageCfm] = [Math.max(0, supply.flow / supply.square), 0];
  const explained = supplyLeakageCfm * supply.flow + returnLeakageCfm * back.flow;
  const modelSquare =
    supplyLeakageCfm ** 2 * supply.square +
    returnLeakageCfm ** 2 * back.square +
    2 * supplyLeakageCfm * returnLeakageCfm * cross;
  return {
    supplyPressurePa: supply.pressurePa,
    returnPressurePa: back.pressurePa,
    supplyLeakageCfm,
    returnLeakageCfm,
    sumOfSquares: Math.max(0, flowSquare - 2 * explained + modelSquare),
    supplyVarianceRatio: isTold ? back.square / determinant : 0,
    returnVarianceRatio: isTold ? supply.square / determinant : 0,
  };
}

/**
 * From a valley of the grid down to its foot: a compass search in the logarithms of the pressures. The curve has a kink
 * where a duct pressure meets an envelope pressure, which a search by slopes would zigzag about.
 */
function descend(
  valley: DeltaQValley,
  points: readonly DeltaQPoint[],
  exponent: Ratio,
  flowSquare: number,
): DeltaQValley {
  let cell = valley;
  let step = Math.log(gridPressures[1]! / gridPressures[0]!) / 2;
  for (let move = 0; move < MOST_MOVES && step > SMALLEST_STEP; move += 1) {
    const neighbors = COMPASS.map(([supply, back]) => {
      const pressure = (from: Pascals, direction: number) =>
        Math.min(Math.max(from * Math.exp(direction * step), LOWEST_PRESSURE_PA), HIGHEST_PRESSURE_PA);
      const supplySide = sideAt(points, supplyResponse, pressure(cell.supplyPressurePa, supply), exponent);
      const returnSide = sideAt(points, returnResponse, pressure(cell.returnPressurePa, back), exponent);
      return fitLeaks(supplySide, returnSide, flowSquare);
    });
    const best = neighbors.reduce((least, each) => (each.sumOfSquares < least.sumOfSquares ? each : least));
    if (best.sumOfSquares < cell.sumOfSquares) cell = best;
    else step /= 2;
  }
  return cell;
}

function valleysOf(cells: readonly DeltaQValley[]): DeltaQValley[] {
  const at = (row: number, column: number) =>
    row < 0 || column < 0 || row >= GRID_COUNT || column >= GRID_COUNT
      ? Number.POSITIVE_INFINITY
      : cells[row * GRID_COUNT + column]!.sumOfSquares;
  return cells
    .filter((cell, place) => {
      const [row, column] = [Math.floor(place / GRID_COUNT), place % GRID_COUNT];
      return [at(row - 1, column), at(row + 1, column), at(row, column - 1), at(row, column + 1)].every(
        (neighbor) => neighbor >= cell.sumOfSquares,
      );
    })
    .sort((a, b) => a.sumOfSquares - b.sumOfSquares)
    .slice(0, MOST_VALLEYS);
}

export interface Interval {
  low: number;
  high: number;
}

/**
 * The range of each unknown over everything that fits about as well: sum of squares at most `limit`. At given pressures
 * the range of a leak is that of a line fit. Null when no cell of the grid fits that well: the data are sharper than it.
 */
export function rangeWithin(
  { cells }: DeltaQProfile,
  limit: number,
): Readonly<
  Record<"supplyLeakageCfm" | "returnLeakageCfm" | "supplyPressurePa" | "returnPressurePa", Interval>
> | null {
  const fitting = cells.filter((cell) => cell.sumOfSquares <= limit);
  if (fitting.length === 0) return null;
  const over = (low: (cell: DeltaQValley) => number, high: (cell: DeltaQValley) => number): Interval => ({
    low: Math.min(...fitting.map(low)),
    high: Math.max(...fitting.map(high)),
  });
  const reach = (cell: DeltaQValley, ratio: number) => Math.sqrt((limit - cell.sumOfSquares) * ratio);
  return {
    supplyLeakageCfm: over(
      (cell) => Math.max(0, cell.supplyLeakageCfm - reach(cell, cell.supplyVarianceRatio)),
      (cell) => cell.supplyLeakageCfm + reach(cell, cell.supplyVarianceRatio),
    ),
    returnLeakageCfm: over(
      (cell) => Math.max(0, cell.returnLeakageCfm - reach(cell, cell.returnVarianceRatio)),
      (cell) => cell.returnLeakageCfm + reach(cell, cell.returnVarianceRatio),
    ),
    supplyPressurePa: over(
      (cell) => cell.supplyPressurePa,
      (cell) => cell.supplyPressurePa,
    ),
    returnPressurePa: over(
      (cell) => cell.returnPressurePa,
      (cell) => cell.returnPressurePa,
    ),
  };
}
