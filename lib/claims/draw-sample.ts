const SHARE_WITH_DRAWS = 0.01;
const HASH_DIGITS = 8;

/** A claim belongs to the 1 % whose ranges are recomputed too; decided by its hash, so the same claims each time. */
export function isDrawnForRanges(packet: unknown): boolean {
  const hash = (packet as { hash?: unknown } | null)?.hash;
  if (typeof hash !== "string") return false;
  const part = Number.parseInt(hash.slice(0, HASH_DIGITS), 16) / 16 ** HASH_DIGITS;
  return part < SHARE_WITH_DRAWS;
}
