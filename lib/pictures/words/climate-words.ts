import type { Language } from "../scene.ts";
import { MONTH_INITIALS, MONTHS } from "./months.ts";

export interface ClimateWords {
  title: string;
  monthsAxis: string;
  binsAxis: string;
  note: string;
  caption: string;
  columns: readonly [string, string, string, string];
  months: readonly string[];
  monthInitials: readonly string[];
  heatingBelow: string;
  coolingAbove: string;
  finding(values: { station: string; coldest: string; cold: string; warmest: string; warm: string }): string;
  findingHours(values: { finding: string; heating: string; cooling: string }): string;
}

const EN: ClimateWords = {
  title: "The weather the estimate uses",
  monthsAxis: "Outdoor temperature (°F), daily low to daily high",
  binsAxis: "Hours a year at each outdoor temperature (°F)",
  note: "Full bars ask for heating, dashed ones for cooling, pale ones for neither.",
  caption: "Outdoor temperature by month",
  columns: ["Month", "Mean (°F)", "Usual daily low (°F)", "Usual daily high (°F)"],
  months: MONTHS.en,
  monthInitials: MONTH_INITIALS.en,
  heatingBelow: "heating",
  coolingAbove: "cooling",
  finding: ({ station, coldest, cold, warmest, warm }) =>
    `${station}: from ${cold} in ${coldest} to ${warm} in ${warmest}, on average.`,
  findingHours: ({ finding, heating, cooling }) =>
    `${finding} ${heating} hours a year ask for heating, ${cooling} for cooling.`,
};

const ES: ClimateWords = {
  title: "El clima que usa el cálculo",
  monthsAxis: "Temperatura exterior (°F), de la mínima a la máxima del día",
  binsAxis: "Horas al año a cada temperatura exterior (°F)",
  note: "Las barras llenas piden calefacción, las de línea cortada piden enfriamiento, las pálidas ninguna de las dos.",
  caption: "Temperatura exterior por mes",
  columns: ["Mes", "Media (°F)", "Mínima diaria usual (°F)", "Máxima diaria usual (°F)"],
  months: MONTHS.es,
  monthInitials: MONTH_INITIALS.es,
  heatingBelow: "calefacción",
  coolingAbove: "enfriamiento",
  finding: ({ station, coldest, cold, warmest, warm }) =>
    `${station}: de ${cold} en ${coldest} a ${warm} en ${warmest}, en promedio.`,
  findingHours: ({ finding, heating, cooling }) =>
    `${finding} ${heating} horas al año piden calefacción, ${cooling} enfriamiento.`,
};

export const CLIMATE_WORDS: Readonly<Record<Language, ClimateWords>> = { en: EN, es: ES };
