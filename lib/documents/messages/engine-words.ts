import type { Language } from "#lib/pictures/scene.ts";
import { CREW_SENTENCES_ES } from "./crew-es.ts";
import { ENGINE_SENTENCES_ES } from "./engine-es.ts";

interface Pattern {
  english: RegExp;
  names: readonly string[];
  spanish: string;
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

const SENTENCES = [...ENGINE_SENTENCES_ES, ...CREW_SENTENCES_ES];
const EXACT = new Map(SENTENCES.filter(([english]) => !english.includes("{")));
const PATTERNS = SENTENCES.filter(([english]) => english.includes("{")).map(toPattern);

/** A sentence of the engine in a language; undefined where there is no translation. What stands in it comes along. */
export function sayOfEngine(language: Language, english: string): string | undefined {
  if (language === "en") return english;
  const exact = EXACT.get(english);
  if (exact !== undefined) return exact;
  for (const { english: pattern, names, spanish } of PATTERNS) {
    const found = pattern.exec(english);
    if (!found) continue;
    const values = new Map(names.map((name, index) => [name, found[index + 1]!]));
    return spanish.replaceAll(PLACEHOLDER, (_, name: string) => {
      const value = values.get(name) ?? "";
      return EXACT.get(value) ?? value;
    });
  }
  return undefined;
}

/** The same, with the English text where there is no translation: names and words of the firm's own. */
export const engineWords = (language: Language, english: string): string => sayOfEngine(language, english) ?? english;
