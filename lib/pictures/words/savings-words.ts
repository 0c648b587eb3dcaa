import type { Language } from "../scene.ts";

export interface SavingsRangeWords {
  title: string;
  axis: string;
  caption: string;
  columns: readonly [string, string];
  rows: readonly [string, string, string];
  four: string;
  finding(values: { p10: string; p50: string; p90: string }): string;
}

export interface SavingsDriversWords {
  title: string;
  note: string;
  axis: string;
  caption: string;
  columns: readonly [string, string, string];
  none: string;
  finding(values: { label: string; low: string; high: string }): string;
  driver(values: { label: string; low: string; high: string }): string;
}

const RANGE_EN: SavingsRangeWords = {
  title: "What sealing may save in a year",
  axis: "Saved in a year ($)",
  caption: "Range of yearly savings",
  columns: ["Chance", "Saved in a year ($)"],
  rows: ["Nine in ten it is more than", "As likely more as less than", "Nine in ten it is less than"],
  four: "4 in 5 chance",
  finding: ({ p10, p50, p90 }) => `About ${p50} a year; four times in five it lies between ${p10} and ${p90}.`,
};

const RANGE_ES: SavingsRangeWords = {
  title: "Lo que sellar puede ahorrar en un año",
  axis: "Ahorro en un año ($)",
  caption: "Rango del ahorro anual",
  columns: ["Probabilidad", "Ahorro en un año ($)"],
  rows: [
    "Nueve de cada diez veces es más de",
    "Tan probable más como menos de",
    "Nueve de cada diez veces es menos de",
  ],
  four: "4 de cada 5 veces",
  finding: ({ p10, p50, p90 }) => `Unos ${p50} al año; cuatro de cada cinco veces estará entre ${p10} y ${p90}.`,
};

const DRIVERS_EN: SavingsDriversWords = {
  title: "What the range hangs on",
  note: "Each bar shows how far the yearly saving moves when one thing alone is at its low or its high end.",
  axis: "Saved in a year ($)",
  caption: "What moves the saving most",
  columns: ["What", "Low end ($)", "High end ($)"],
  none: "Nothing moves the saving by a dollar.",
  finding: ({ label, low, high }) =>
    `Most hangs on ${label}: with it alone the saving moves between ${low} and ${high}.`,
  driver: ({ label, low, high }) => `${label}: ${low} to ${high}`,
};

const DRIVERS_ES: SavingsDriversWords = {
  title: "De qué depende el rango",
  note: "Cada barra muestra cuánto se mueve el ahorro anual cuando una sola cosa está en su extremo bajo o alto.",
  axis: "Ahorro en un año ($)",
  caption: "Lo que más mueve el ahorro",
  columns: ["Qué", "Extremo bajo ($)", "Extremo alto ($)"],
  none: "Nada mueve el ahorro ni un dólar.",
  finding: ({ label, low, high }) => `Lo que más pesa es ${label}: por sí solo mueve el ahorro entre ${low} y ${high}.`,
  driver: ({ label, low, high }) => `${label}: ${low} a ${high}`,
};

export const SAVINGS_RANGE_WORDS: Readonly<Record<Language, SavingsRangeWords>> = { en: RANGE_EN, es: RANGE_ES };
export const SAVINGS_DRIVERS_WORDS: Readonly<Record<Language, SavingsDriversWords>> = {
  en: DRIVERS_EN,
  es: DRIVERS_ES,
};
