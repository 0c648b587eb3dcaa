/** Number of single-letter edits that turn one word into another (Levenshtein distance). */
function editDistance(from: string, to: string): number {
  let previous = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= to.length; column += 1) {
      const replace = previous[column - 1]! + (from[row - 1] === to[column - 1] ? 0 : 1);
      current.push(Math.min(replace, previous[column]! + 1, current[column - 1]! + 1));
    }
    previous = current;
  }
  return previous[to.length]!;
}

/** How far off a name may be and still be taken for a slip: a third of its letters. */
const SLIP_SHARE = 1 / 3;

/**
 * The known name that a mistyped one most likely meant: few letters off, or one of the two words within the other
 * (`fanFlowCfm` for `flowCfm`). Undefined when none is near.
 */
export function nearestName(given: string, known: readonly string[]): string | undefined {
  const word = given.slice(0, 80).toLowerCase();
  const candidates = known.flatMap((name) => {
    const lower = name.toLowerCase();
    const distance = editDistance(word, lower);
    const isWithin = lower.length > 3 && word.length > 3 && (word.includes(lower) || lower.includes(word));
    return distance <= Math.floor(name.length * SLIP_SHARE) || isWithin ? [{ name, distance }] : [];
  });
  return candidates.sort((a, b) => a.distance - b.distance)[0]?.name;
}
