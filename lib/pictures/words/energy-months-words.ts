import type { Language } from "../scene.ts";

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
  months: [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
  ],
  monthInitials: ["J", "F", "M", "A", "M", "J", "J", "A", "S", "O", "N", "D"],
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
  months: [
    "enero",
    "febrero",
    "marzo",
    "abril",
    "mayo",
    "junio",
    "julio",
    "agosto",
    "septiembre",
    "octubre",
    "noviembre",
    "diciembre",
  ],
  monthInitials: ["E", "F", "M", "A", "M", "J", "J", "A", "S", "O", "N", "D"],
  before: "hoy",
  after: "después de sellar",
  finding: ({ fuel, month, before, after }) =>
    `El mayor cambio es ${fuel} en ${month}: ${before} hoy, ${after} después de sellar.`,
  noChange: "Ningún mes cambia.",
  bar: ({ fuel, month, before, after }) => `${fuel}, ${month}: ${before} hoy, ${after} después de sellar`,
};

export const ENERGY_MONTHS_WORDS: Readonly<Record<Language, EnergyMonthsWords>> = { en: EN, es: ES };
