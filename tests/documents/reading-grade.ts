/**
 * How many years of school a text asks for, or how easy it is. Syllables are counted by groups of vowels, which is how
 * the formulas are run by program everywhere; names and figures count as they are read.
 */
const VOWELS_EN = /[aeiouy]+/g;
/** A weak vowel beside a strong one makes no syllable of its own. */
const VOWELS_ES = /[aeoáéó]|(?<![aeoáéó])[iuü](?![aeoáéóíú])|[íú]/g;

export interface TextCount {
  words: number;
  sentences: number;
  syllables: number;
}

export function countText(text: string, language: "en" | "es"): TextCount {
  const sentences = text.split(/[.!?:](?:\s|$)/).filter((part) => /\p{L}/u.test(part)).length;
  const words = text.match(/[\p{L}’']+/gu) ?? [];
  const syllables = words.reduce((sum, word) => sum + syllablesOf(word.toLowerCase(), language), 0);
  return { words: words.length, sentences, syllables };
}

function syllablesOf(word: string, language: "en" | "es"): number {
  if (language === "es") return Math.max(1, word.match(VOWELS_ES)?.length ?? 0);
  const groups =
    word.replace(/(?:[^l]e|ed)$/, (end) => (/[td]ed$/.test(word) ? end : "")).match(VOWELS_EN)?.length ?? 0;
  return Math.max(1, groups);
}

/** Kincaid and others, 1975: .39 words per sentence + 11.8 syllables per word − 15.59, in school years. */
export function fleschKincaidGrade({ words, sentences, syllables }: TextCount): number {
  return 0.39 * (words / sentences) + 11.8 * (syllables / words) - 15.59;
}

/** Fernández Huerta, 1959: 206.84 − .60 syllables per 100 words − 1.02 words per sentence; 60 to 70 is plain, above easy. */
export function fernandezHuerta({ words, sentences, syllables }: TextCount): number {
  return 206.84 - 0.6 * ((100 * syllables) / words) - 1.02 * (words / sentences);
}
