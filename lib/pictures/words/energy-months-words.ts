import type { Language } from "../scene.ts";
import { MONTH_INITIALS, MONTHS } from "./months.ts";

export interface EnergyMonthsWords {
  title: string;
  note: string;
  caption: string;
  month: string;
  months: readonly string[];
  monthInitials: readonly string[];
  before: string;
  after: string;
  finding(values: { fuel: string; month: string; before: string; after: string }): string;
  noChange: string;
  bar(values: { fuel: string; month: string; before: string; after: string }): string;
}

const EN: EnergyMonthsWords = {
  title: "Month by month",
  note: "The whole bar is today; the plain part is what is left after sealing; the hatched part is saved.",
  caption: "Energy for heating and cooling by month",
  month: "Month",
  months: MONTHS.en,
  monthInitials: MONTH_INITIALS.en,
  before: "today",
  after: "after sealing",
  finding: ({ fuel, month, before, after }) =>
    `The largest change is ${fuel} in ${month}: ${before} today, ${after} after sealing.`,
  noChange: "No month changes.",
  bar: ({ fuel, month, before, after }) => `${fuel}, ${month}: ${before} today, ${after} after sealing`,
};

const ES: EnergyMonthsWords = {
  title: "Mes por mes",
  note: "La barra entera es hoy; la parte lisa es lo que queda después de sellar; la parte rayada se ahorra.",
  caption: "Energía para calefacción y aire acondicionado por mes",
  month: "Mes",
  months: MONTHS.es,
  monthInitials: MONTH_INITIALS.es,
  before: "hoy",
  after: "después de sellar",
  finding: ({ fuel, month, before, after }) =>
    `El mayor cambio es ${fuel} en ${month}: ${before} hoy, ${after} después de sellar.`,
  noChange: "Ningún mes cambia.",
  bar: ({ fuel, month, before, after }) => `${fuel}, ${month}: ${before} hoy, ${after} después de sellar`,
};

export const ENERGY_MONTHS_WORDS: Readonly<Record<Language, EnergyMonthsWords>> = { en: EN, es: ES };
