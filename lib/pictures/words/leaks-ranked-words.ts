import type { Language } from "../scene.ts";

export type Effort = "easy" | "moderate" | "hard";

export interface LeaksRankedWords {
  title: string;
  note: string;
  caption: string;
  columns: readonly [string, string, string, string, string];
  effort: Readonly<Record<Effort, string>>;
  shortEffort: Readonly<Record<Effort, string>>;
  perYear: string;
  sealed: string;
  none: string;
  finding(values: { count: number; all: number; share: string }): string;
  findingOne(values: { label: string; cfm: string }): string;
  leak(values: { number: number; label: string; cfm: string; dollars: string; effort: string }): string;
}

const EN: LeaksRankedWords = {
  title: "Which leaks matter",
  note: "Bars show leakage at 25 Pa. Dollars weigh in the pressure behind each leak while the system runs.",
  caption: "Leaks, largest first",
  columns: ["Leak", "Place", "Leakage at 25 Pa (cfm)", "Lost in a year ($)", "Reach"],
  effort: { easy: "easy to reach", moderate: "some work to reach", hard: "hard to reach" },
  shortEffort: { easy: "easy", moderate: "some work", hard: "hard" },
  perYear: "a year",
  sealed: "sealed",
  none: "No leak has been entered yet.",
  finding: ({ count, all, share }) =>
    `${count === 1 ? "One leak" : `${count} leaks`} out of ${all} make${count === 1 ? "s" : ""} up ${share} of what was found.`,
  findingOne: ({ label, cfm }) => `One leak was found: ${label}, ${cfm} at 25 Pa.`,
  leak: ({ number, label, cfm, dollars, effort }) =>
    `Leak ${number}: ${label}, ${cfm} at 25 Pa, ${dollars} a year, ${effort}`,
};

const ES: LeaksRankedWords = {
  title: "Qué fugas importan",
  note: "Las barras muestran la fuga a 25 Pa. Los dólares cuentan la presión detrás de cada fuga cuando el sistema funciona.",
  caption: "Fugas, de mayor a menor",
  columns: ["Fuga", "Lugar", "Fuga a 25 Pa (cfm)", "Se pierde en un año ($)", "Acceso"],
  effort: { easy: "fácil de alcanzar", moderate: "cuesta algo llegar", hard: "difícil de alcanzar" },
  shortEffort: { easy: "fácil", moderate: "algo difícil", hard: "difícil" },
  perYear: "al año",
  sealed: "sellada",
  none: "Todavía no se ha anotado ninguna fuga.",
  finding: ({ count, all, share }) =>
    `${count === 1 ? "Una fuga" : `${count} fugas`} de ${all} ${count === 1 ? "suma" : "suman"} ${share} de lo encontrado.`,
  findingOne: ({ label, cfm }) => `Se encontró una fuga: ${label}, ${cfm} a 25 Pa.`,
  leak: ({ number, label, cfm, dollars, effort }) =>
    `Fuga ${number}: ${label}, ${cfm} a 25 Pa, ${dollars} al año, ${effort}`,
};

export const LEAKS_RANKED_WORDS: Readonly<Record<Language, LeaksRankedWords>> = { en: EN, es: ES };
