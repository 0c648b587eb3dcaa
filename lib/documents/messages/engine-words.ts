import type { Language } from "#lib/pictures/scene.ts";
import { CREW_SENTENCES_ES } from "./crew-es.ts";
import { ENGINE_SENTENCES_ES } from "./engine-es.ts";
import { REASONS_ES } from "./result-warnings-es.ts";

type Sentences = readonly (readonly [english: string, spanish: string])[];

interface Pattern {
  english: RegExp;
  names: readonly string[];
  spanish: string;
}

/** Sentences with their translation. */
export interface SentenceBook {
  /** The translation; undefined where there is none. */
  say(english: string): string | undefined;
}

const PLACEHOLDER = /\{(\w+)\}/g;
const escaped = (text: string): string => text.replaceAll(/[.*+?^$()|[\]\\]/g, "\\$&");

function toPattern([english, spanish]: readonly [string, string]): Pattern {
  return {
    english: new RegExp(`^${escaped(english).replaceAll(PLACEHOLDER, "(.+?)")}$`),
    names: [...english.matchAll(PLACEHOLDER)].map(([, name]) => name!),
    spanish,
  };
}

/**
 * A book of sentences. `{x}` stands for a name or a number that is carried over: what stands there is said in the other
 * language where this book or the engine's own has it, and stays as it is where neither does.
 */
export function sentenceBook(sentences: Sentences): SentenceBook {
  const exact = new Map(sentences.filter(([english]) => !english.includes("{")));
  const patterns = sentences.filter(([english]) => english.includes("{")).map(toPattern);
  const say = (english: string): string | undefined => {
    const whole = exact.get(english);
    if (whole !== undefined) return whole;
    for (const { english: pattern, names, spanish } of patterns) {
      const found = pattern.exec(english);
      if (!found) continue;
      const values = new Map(names.map((name, index) => [name, found[index + 1]!]));
      return spanish.replaceAll(PLACEHOLDER, (_, name: string) => {
        const value = values.get(name) ?? "";
        return say(value) ?? ENGINE_ES.say(value) ?? value;
      });
    }
    return undefined;
  };
  return { say };
}

const ENGINE_ES: SentenceBook = sentenceBook([...ENGINE_SENTENCES_ES, ...CREW_SENTENCES_ES, ...REASONS_ES]);

/** A sentence of the engine in a language; undefined where there is no translation. What stands in it comes along. */
export const sayOfEngine = (language: Language, english: string): string | undefined =>
  language === "en" ? english : ENGINE_ES.say(english);

/** The same, with the English text where there is no translation: names and words of the firm's own. */
export const engineWords = (language: Language, english: string): string => sayOfEngine(language, english) ?? english;
