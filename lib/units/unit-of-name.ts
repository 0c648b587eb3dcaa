import { UNIT_BY_SUFFIX, type UnitName } from "./unit-names.ts";

const SUFFIXES = (Object.entries(UNIT_BY_SUFFIX) as [string, UnitName][]).sort(([a], [b]) => b.length - a.length);

/** The unit that a name's ending promises: the longest ending wins; a list's plural counts as its singular. */
export function unitOfName(name: string): UnitName | undefined {
  const words = [name, name.replace(/s$/, "")];
  for (const [suffix, unit] of SUFFIXES) {
    const asWholeName = suffix[0]!.toLowerCase() + suffix.slice(1);
    if (words.some((word) => word === asWholeName || endsAtAWord(word, suffix))) return unit;
  }
  return undefined;
}

/** `TempF` ends in the word `F`; `OFF` does not, for its F does not start a word. */
function endsAtAWord(name: string, suffix: string): boolean {
  if (!name.endsWith(suffix)) return false;
  return /[a-z0-9]$/.test(name.slice(0, -suffix.length));
}
