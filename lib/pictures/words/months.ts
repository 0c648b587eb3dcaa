import type { Language } from "../scene.ts";

/** January first, as a sentence says them. */
export const MONTHS: Readonly<Record<Language, readonly string[]>> = {
  en: [
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
  es: [
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
};

/** For an axis with little room. */
export const MONTH_INITIALS: Readonly<Record<Language, readonly string[]>> = {
  en: ["J", "F", "M", "A", "M", "J", "J", "A", "S", "O", "N", "D"],
  es: ["E", "F", "M", "A", "M", "J", "J", "A", "S", "O", "N", "D"],
};
