import type { Fahrenheit } from "#lib/units/quantity.ts";
import type { BillColumns } from "./bill-columns.ts";
import type { BalanceTemperatures, ChangePointModel } from "./change-point-model.ts";
import { fitColumns } from "./fit-linear-part.ts";
import { type Candidate, refineBalances } from "./refine-balances.ts";

const GRID_STEP_F = 1;
/** Valleys of the grid that are looked into: the deepest is not always where its lowest grid point stands. */
const STARTS = 4;
const START_DISTANCE_F = 3;

export interface BalanceSearch {
  balance: BalanceTemperatures;
  /** The search ended at the edge of what the bills can tell. */
  isAtLimit: boolean;
}

/** The range within which bills can tell a balance temperature. */
interface TellableRange {
  lowF: Fahrenheit;
  highF: Fahrenheit;
}

/** Between the second coldest and the second warmest period, so that each side holds at least two. */
export function tellableRange({ meanTemperaturesF }: BillColumns): TellableRange {
  const sorted = [...meanTemperaturesF].sort((a, b) => a - b);
  return { lowF: sorted[1]!, highF: sorted.at(-2)! };
}

/** Every point of a regular grid over the range, heating never above cooling, with its squared misses. */
export function gridCandidates(columns: BillColumns, model: ChangePointModel, stepF: number): Candidate[] {
  const { lowF, highF } = tellableRange(columns);
  const count = Math.ceil((highF - lowF) / stepF);
  const axis = [...Array.from({ length: count }, (_, step) => lowF + step * stepF), highF];
  const degreesAt = (season: "heating" | "cooling") =>
    axis.map((balanceF) => ({ balanceF, degrees: columns.degrees(season, balanceF) }));
  const none = [{ balanceF: null, degrees: null }];
  const coolingAxis = model === "heating" ? none : degreesAt("cooling");
  return (model === "cooling" ? none : degreesAt("heating")).flatMap((heating) =>
    coolingAxis
      .filter(
        (cooling) => heating.balanceF === null || cooling.balanceF === null || cooling.balanceF >= heating.balanceF,
      )
      .map((cooling) => ({
        heatingF: heating.balanceF,
        coolingF: cooling.balanceF,
        misses: fitColumns(columns, { heating: heating.degrees, cooling: cooling.degrees }).squaredMisses,
      })),
  );
}

/**
 * The balance temperatures with the least squared misses: a grid of 1 °F over the range that the bills can tell, then
 * each of its few deepest valleys refined, and the best of them taken.
 */
export function searchBalances(columns: BillColumns, model: ChangePointModel): BalanceSearch {
  const range = tellableRange(columns);
  const inOrder = gridCandidates(columns, model, GRID_STEP_F).sort((a, b) => a.misses - b.misses);
  const starts: Candidate[] = [];
  for (const candidate of inOrder) {
    if (starts.length === STARTS) break;
    if (starts.every((start) => distanceF(start, candidate) >= START_DISTANCE_F)) starts.push(candidate);
  }
  const best = starts
    .map((start) => refineBalances({ columns, start, range }))
    .reduce((least, each) => (each.misses < least.misses ? each : least));
  const ends = [best.heatingF, best.coolingF].filter((each) => each !== null);
  return {
    balance: { heatingF: best.heatingF, coolingF: best.coolingF },
    isAtLimit: ends.some((each) => each - range.lowF < GRID_STEP_F / 2 || range.highF - each < GRID_STEP_F / 2),
  };
}

function distanceF(a: BalanceTemperatures, b: BalanceTemperatures): number {
  return Math.abs((a.heatingF ?? 0) - (b.heatingF ?? 0)) + Math.abs((a.coolingF ?? 0) - (b.coolingF ?? 0));
}
