import type { Language } from "../scene.ts";
import { MONTH_INITIALS, MONTHS } from "./months.ts";

export interface WeatherShiftsWords {
  title: string;
  caption: string;
  /** Head of the rows, with the unit of temperature. */
  rowHead(unit: string): string;
  year: string;
  months: readonly string[];
  monthsShort: readonly string[];
  monthInitials: readonly string[];
  /** Midnight to 8, 8 to 16, 16 to midnight, local standard time. */
  shifts: readonly [string, string, string];
  axis(unit: string): string;
  range(values: { low: string; high: string }): string;
  note(values: { widest: string; step: string }): string;
  finding(values: {
    station: string;
    cold: string;
    coldest: string;
    coldShift: string;
    warm: string;
    warmest: string;
    warmShift: string;
    below: string;
    heatingBase: string;
    above: string;
    coolingBase: string;
  }): string;
}

const EN: WeatherShiftsWords = {
  title: "How cold and how hot, by month and time of day",
  caption: "Hours of a typical year at each outdoor temperature, by month and 8-hour shift",
  rowHead: (unit) => `Shift and temperature (${unit})`,
  year: "Year",
  months: MONTHS.en,
  monthsShort: ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"],
  monthInitials: MONTH_INITIALS.en,
  shifts: ["midnight to 8 am", "8 am to 4 pm", "4 pm to midnight"],
  axis: (unit) => `Outdoor temperature (${unit})`,
  range: ({ low, high }) => `${low} to ${high}`,
  note: ({ widest, step }) =>
    `The wider a bar, the more hours of that month and shift; the widest is ${widest} hours. Full bars lie below the heating base, open ones above the cooling base, pale ones between. Hours are counted in steps of ${step}, so a step that a base cuts goes to the side of its middle. Times are local standard time.`,
  finding: (of) =>
    `${of.station}: from ${of.cold} on average in ${of.coldest}, ${of.coldShift}, to ${of.warm} in ${of.warmest}, ${of.warmShift}; ${of.below} hours a year are colder than ${of.heatingBase} and ${of.above} hotter than ${of.coolingBase}.`,
};

const ES: WeatherShiftsWords = {
  title: "Cuánto frío y cuánto calor, por mes y hora del día",
  caption: "Horas de un año típico a cada temperatura exterior, por mes y turno de 8 horas",
  rowHead: (unit) => `Turno y temperatura (${unit})`,
  year: "Año",
  months: MONTHS.es,
  monthsShort: ["ene", "feb", "mar", "abr", "may", "jun", "jul", "ago", "sep", "oct", "nov", "dic"],
  monthInitials: MONTH_INITIALS.es,
  shifts: ["medianoche a 8", "8 a 16 h", "16 h a medianoche"],
  axis: (unit) => `Temperatura exterior (${unit})`,
  range: ({ low, high }) => `${low} a ${high}`,
  note: ({ widest, step }) =>
    `Cuanto más ancha la barra, más horas de ese mes y turno; la más ancha son ${widest} horas. Las barras llenas quedan por debajo de la base de calefacción, las vacías por encima de la de enfriamiento, las pálidas entre las dos. Las horas se cuentan en pasos de ${step}; un paso cortado por una base va al lado de su centro. Hora local estándar.`,
  finding: (of) =>
    `${of.station}: de ${of.cold} en promedio en ${of.coldest}, ${of.coldShift}, a ${of.warm} en ${of.warmest}, ${of.warmShift}; ${of.below} horas al año son más frías que ${of.heatingBase} y ${of.above} más calientes que ${of.coolingBase}.`,
};

export const WEATHER_SHIFTS_WORDS: Readonly<Record<Language, WeatherShiftsWords>> = { en: EN, es: ES };
