const SEARCH_STEPS = 60;
const SEARCH_TOLERANCE = 1e-10;

/**
 * The yearly load, as a multiple of a first guess, that makes a group of systems use exactly what is known to have been
 * used. Input grows with the load, so the root is bracketed and found by bounded false position with bisection; for
 * equipment whose input is proportional to the load the first guess is the answer. Returns 0 when nothing was used.
 * @throws Error when the search does not close: our fault, since input is continuous and increasing.
 */
export function loadScaleForUse(knownBtu: number, inputOfScale: (scale: number) => number): number {
  if (!(knownBtu > 0)) return 0;
  const first = inputOfScale(1);
  if (!(first > 0)) return 0;
  const isClose = (value: number) => Math.abs(value - knownBtu) <= SEARCH_TOLERANCE * knownBtu;
  let guess = knownBtu / first;
  let value = inputOfScale(guess);
  let low = 0;
  let lowValue = 0;
  let high = Number.POSITIVE_INFINITY;
  let highValue = Number.POSITIVE_INFINITY;
  for (let step = 0; step < SEARCH_STEPS; step++) {
    if (isClose(value)) return guess;
    if (value < knownBtu) {
      low = guess;
      lowValue = value;
    } else {
      high = guess;
      highValue = value;
    }
    if (high === Number.POSITIVE_INFINITY) guess *= 1 + 2 * Math.min(1, knownBtu / value - 1);
    // False position sticks to one end on a curve; every third step halves.
    else if (step % 3 === 2) guess = (low + high) / 2;
    else guess = low + ((knownBtu - lowValue) * (high - low)) / (highValue - lowValue);
    value = inputOfScale(guess);
  }
  if (isClose(value)) return guess;
  throw new Error(`The load that explains ${knownBtu} Btu was not found`);
}
