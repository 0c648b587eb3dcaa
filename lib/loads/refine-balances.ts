import { solveLinearSystem } from "#lib/numeric/solve-linear-system.ts";
import type { Fahrenheit } from "#lib/units/quantity.ts";
import type { BillColumns } from "./bill-columns.ts";
import type { BalanceTemperatures } from "./change-point-model.ts";
import { fitLinearPart } from "./fit-linear-part.ts";

/** Balance temperatures with their weighted sum of squared misses. */
export interface Candidate extends BalanceTemperatures {
  misses: number;
}

const MOST_STEPS = 40;
const MOST_HALVINGS = 12;
const COMPASS_START_F = 0.25;
const COMPASS_FINEST_F = 1e-10;
const MOST_COMPASS_ROUNDS = 150;

interface Search {
  columns: BillColumns;
  range: { lowF: Fahrenheit; highF: Fahrenheit };
}

/**
 * Walks from a start down to the nearest least squared misses. First steps that take the model as linear in its balance
 * temperatures (between two days' temperatures it is), halved until they help; then a compass search for the last bit,
 * where a kink stops those steps. Bounded; ends where nothing near is better.
 */
export function refineBalances({ columns, start, range }: Search & { start: Candidate }): Candidate {
  let best = start;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const move = linearMove(columns, best);
    const better = move && halvedUntilBetter({ columns, range, from: best, move });
    if (!better) break;
    best = better;
  }
  return compassSearch({ columns, range, start: best });
}

/**
 * The change of the balance temperatures that a linear model asks for.
 * y ≈ b + s_h x_h + s_h f_h δ_h + s_c x_c − s_c f_c δ_c, with x the average degrees and f the share of days beyond.
 */
function linearMove(columns: BillColumns, { heatingF, coolingF }: Candidate): BalanceTemperatures | null {
  const regressors: (readonly number[])[] = [];
  if (heatingF !== null)
    regressors.push(columns.degrees("heating", heatingF), columns.sharesBeyond("heating", heatingF));
  if (coolingF !== null)
    regressors.push(columns.degrees("cooling", coolingF), columns.sharesBeyond("cooling", coolingF));
  const { usePerDay, weights } = columns;
  const centered = [...regressors, usePerDay].map((column) => {
    const mean = column.reduce((sum, value, i) => sum + weights[i]! * value, 0) / column.length;
    return column.map((value) => value - mean);
  });
  const product = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, value, i) => sum + weights[i]! * value * b[i]!, 0);
  const y = centered.pop()!;
  // Columns of different size are brought to one, so that a small one is not taken for none.
  const sizes = centered.map((column) => Math.sqrt(product(column, column)) || 1);
  const scaled = centered.map((column, index) => column.map((value) => value / sizes[index]!));
  const solution = solveLinearSystem(
    scaled.map((row) => scaled.map((column) => product(row, column))),
    scaled.map((row) => product(row, y)),
  );
  if (solution === null) return null;
  const [first, second, third, fourth] = solution.map((value, index) => value / sizes[index]!);
  const heating = heatingF === null ? null : second! / first!;
  const [coolingSlope, coolingShift] = heatingF === null ? [first, second] : [third, fourth];
  const cooling = coolingF === null ? null : -coolingShift! / coolingSlope!;
  return { heatingF: heating, coolingF: cooling };
}

function halvedUntilBetter({
  columns,
  range,
  from,
  move,
}: Search & { from: Candidate; move: BalanceTemperatures }): Candidate | null {
  let share = 1;
  for (let halving = 0; halving < MOST_HALVINGS; halving += 1) {
    const moved = candidateAt(columns, {
      heatingF: from.heatingF === null ? null : clamp(from.heatingF + share * move.heatingF!, range),
      coolingF: from.coolingF === null ? null : clamp(from.coolingF + share * move.coolingF!, range),
    });
    if (moved !== null && moved.misses < from.misses) return moved;
    share /= 2;
  }
  return null;
}

function compassSearch({ columns, range, start }: Search & { start: Candidate }): Candidate {
  let best = start;
  let stepF = COMPASS_START_F;
  for (let round = 0; round < MOST_COMPASS_ROUNDS && stepF > COMPASS_FINEST_F; round += 1) {
    const moves = [-stepF, 0, stepF];
    const heatingMoves = best.heatingF === null ? [0] : moves;
    const coolingMoves = best.coolingF === null ? [0] : moves;
    const around = heatingMoves.flatMap((heating) =>
      coolingMoves.map((cooling) =>
        candidateAt(columns, {
          heatingF: best.heatingF === null ? null : clamp(best.heatingF + heating, range),
          coolingF: best.coolingF === null ? null : clamp(best.coolingF + cooling, range),
        }),
      ),
    );
    const better = around.reduce<Candidate>((least, each) => (each && each.misses < least.misses ? each : least), best);
    if (better === best) stepF /= 2;
    else best = better;
  }
  return best;
}

/** Null where heating would start above cooling, or a move was no number. */
function candidateAt(columns: BillColumns, balance: BalanceTemperatures): Candidate | null {
  const { heatingF, coolingF } = balance;
  if (!Number.isFinite(heatingF ?? 0) || !Number.isFinite(coolingF ?? 0)) return null;
  if (heatingF !== null && coolingF !== null && heatingF > coolingF) return null;
  return { ...balance, misses: fitLinearPart(columns, balance).squaredMisses };
}

const clamp = (valueF: number, { lowF, highF }: Search["range"]): number => Math.min(highF, Math.max(lowF, valueF));
