import { GLOSSARY, type GlossaryEntry } from "./glossary.ts";

/** A piece of a sentence: plain words, or words that stand for a term. */
export type Piece = string | { words: string; entry: GlossaryEntry };

const escaped = (words: string): string => words.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`);

const BY_WORDS = new Map<string, GlossaryEntry>(
  GLOSSARY.flatMap((entry: GlossaryEntry) =>
    [entry.term, ...(entry.also ?? [])].map((words) => [words.toLowerCase(), entry]),
  ),
);
/** Longest first, so that a return grille is no return. */
const ANY_TERM = new RegExp(
  `(?<![\\w-])(${[...BY_WORDS.keys()]
    .sort((a, b) => b.length - a.length)
    .map(escaped)
    .join("|")})(?![\\w-])`,
  "gi",
);

/** A sentence in pieces; of each term only its first mention, and none that is known already. */
export function findTerms(sentence: string, known: ReadonlySet<GlossaryEntry> = new Set()): Piece[] {
  const seen = new Set(known);
  const pieces: Piece[] = [];
  let end = 0;
  for (const match of sentence.matchAll(ANY_TERM)) {
    const entry = BY_WORDS.get(match[0].toLowerCase());
    if (!entry || seen.has(entry)) continue;
    seen.add(entry);
    if (match.index > end) pieces.push(sentence.slice(end, match.index));
    pieces.push({ words: match[0], entry });
    end = match.index + match[0].length;
  }
  if (end < sentence.length) pieces.push(sentence.slice(end));
  return pieces;
}

/** The terms of a sentence, in the order of their first mention. */
export const termsOf = (sentence: string): GlossaryEntry[] =>
  findTerms(sentence).flatMap((piece) => (typeof piece === "string" ? [] : [piece.entry]));
