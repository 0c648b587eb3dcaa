import { addColumn, addRow, type ModelDraft, type Term, times } from "./model-draft.ts";

/** Pieces that the square root is cut into before the first solve. */
const FIRST_PIECES_COUNT = 8;

/**
 * Cut points of the repairs' variance V, evenly spaced in √(u² + V), which is what they have to follow.
 * Two points (0 and the largest V) when the repairs bring no variance of their own: 0 only.
 */
export function firstBreakpoints({
  fixedVariance,
  mostVariance,
}: {
  fixedVariance: number;
  mostVariance: number;
}): number[] {
  if (!(mostVariance > 0)) return [0];
  const low = Math.sqrt(fixedVariance);
  const high = Math.sqrt(fixedVariance + mostVariance);
  const inner = Array.from({ length: FIRST_PIECES_COUNT - 1 }, (_, index) => {
    const root = low + ((index + 1) * (high - low)) / FIRST_PIECES_COUNT;
    return root ** 2 - fixedVariance;
  });
  return [0, ...inner, mostVariance];
}

/**
 * Σ terms that never exceed √(u² + V) and equal it at every breakpoint: the chords of the root between breakpoints,
 * one of them switched on. The root is concave, so a chord lies below it: the model allows a little too much and never
 * too little.
 */
export function addRootTerms(
  draft: ModelDraft,
  { fixedVariance, breakpoints }: { fixedVariance: number; breakpoints: readonly number[] },
): { terms: Term[]; constant: number } {
  if (breakpoints.length < 2) return { terms: [], constant: Math.sqrt(fixedVariance) };
  const terms: Term[] = [];
  const switches: number[] = [];
  const variances: number[] = [];
  for (let piece = 0; piece + 1 < breakpoints.length; piece += 1) {
    const from = breakpoints[piece]!;
    const to = breakpoints[piece + 1]!;
    const rootFrom = Math.sqrt(fixedVariance + from);
    const slope = (Math.sqrt(fixedVariance + to) - rootFrom) / (to - from);
    const isOn = addColumn(draft, { name: `piece ${piece}`, objective: 0, lower: 0, upper: 1, isInteger: true });
    const variance = addColumn(draft, {
      name: `variance ${piece}`,
      objective: 0,
      lower: 0,
      upper: to,
      isInteger: false,
    });
    const within = (sign: number, edge: number): Term[] => [
      { column: variance, coefficient: sign },
      { column: isOn, coefficient: -sign * edge },
    ];
    addRow(draft, { name: `piece ${piece} from`, lower: 0, upper: Infinity, terms: within(1, from) });
    addRow(draft, { name: `piece ${piece} to`, lower: 0, upper: Infinity, terms: within(-1, to) });
    terms.push({ column: isOn, coefficient: rootFrom - slope * from }, { column: variance, coefficient: slope });
    switches.push(isOn);
    variances.push(variance);
  }
  addRow(draft, { name: "one piece", lower: 1, upper: 1, terms: times(switches, 1) });
  const fromRepairs = draft.tallies.removedVariance.map((term) => ({ ...term, coefficient: -term.coefficient }));
  addRow(draft, { name: "all variance", lower: 0, upper: Infinity, terms: [...times(variances, 1), ...fromRepairs] });
  return { terms, constant: 0 };
}
