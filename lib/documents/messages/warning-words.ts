import type { Warning } from "#lib/job/result/evidence-result.ts";
import type { Language } from "#lib/pictures/scene.ts";
import { type SentenceBook, sayOfEngine, sentenceBook } from "./engine-words.ts";
import { READING_WARNINGS_ES } from "./reading-warnings-es.ts";
import { RESULT_WARNINGS_ES } from "./result-warnings-es.ts";

/** By the code of a warning: each sentence that it can give and the same in Spanish; `{x}` is carried over. */
export type WarningSentences = Readonly<Record<string, readonly (readonly [english: string, spanish: string])[]>>;

const WARNINGS_ES: WarningSentences = { ...READING_WARNINGS_ES, ...RESULT_WARNINGS_ES };
const BOOKS = new Map<string, SentenceBook>(
  Object.entries(WARNINGS_ES).map(([code, sentences]) => [code, sentenceBook(sentences)]),
);

/** The codes of the warnings that have Spanish sentences. */
export const WARNING_CODES: readonly string[] = Object.keys(WARNINGS_ES);

/** One sentence of the warning of a code; undefined where there is no translation. */
export function sayWarningSentence(language: Language, code: string, english: string): string | undefined {
  if (language === "en") return english;
  const book = BOOKS.get(code);
  return book && (book.say(english) ?? sayOfEngine(language, english));
}

/** A warning in three sentences: what was seen, why it matters, what to do next; undefined where one is missing. */
export function sayWarning(language: Language, warning: Omit<Warning, "path" | "severity">): string | undefined {
  const { code, what, why, nextMove } = warning;
  const said = [what, why, nextMove].map((english) => sayWarningSentence(language, code, english));
  return said.includes(undefined) ? undefined : said.join(" ");
}
