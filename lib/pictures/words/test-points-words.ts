import type { Language } from "../scene.ts";

export interface TestPointsWords {
  title: string;
  note: string;
  pressure: string;
  flow: string;
  caption: string;
  columns: readonly [string, string, string, string];
  good: string;
  doubtful: string;
  noReading: string;
  doubtfulStep(number: number): string;
  finding(values: { pressure: string; flow: string }): string;
  findingRange(values: { pressure: string; flow: string; low: string; high: string }): string;
  point(values: { number: number; pressure: string; flow: string; state: string }): string;
}

const EN: TestPointsWords = {
  title: "The readings and the line through them",
  note: "Both scales are logarithmic, so a leak that obeys the power law lies on a straight line. The band is where the line may lie.",
  pressure: "Duct pressure (Pa)",
  flow: "Flow (cfm)",
  caption: "Test points",
  columns: ["Step", "Duct pressure (Pa)", "Flow (cfm)", "Reading"],
  good: "good",
  doubtful: "doubtful",
  noReading: "No readings yet.",
  doubtfulStep: (number) => `step ${number}, doubtful`,
  finding: ({ pressure, flow }) => `At ${pressure} the ducts leak ${flow}.`,
  findingRange: ({ pressure, flow, low, high }) =>
    `At ${pressure} the ducts leak ${flow}, and the line allows ${low} to ${high}.`,
  point: ({ number, pressure, flow, state }) => `Step ${number}: ${flow} at ${pressure}, ${state}`,
};

const ES: TestPointsWords = {
  title: "Las lecturas y la línea que pasa por ellas",
  note: "Las dos escalas son logarítmicas: una fuga que sigue la ley de potencia queda en línea recta. La banda es donde puede estar la línea.",
  pressure: "Presión en los ductos (Pa)",
  flow: "Flujo (cfm)",
  caption: "Puntos de la prueba",
  columns: ["Paso", "Presión en los ductos (Pa)", "Flujo (cfm)", "Lectura"],
  good: "buena",
  doubtful: "dudosa",
  noReading: "Todavía no hay lecturas.",
  doubtfulStep: (number) => `paso ${number}, dudoso`,
  finding: ({ pressure, flow }) => `A ${pressure} los ductos pierden ${flow}.`,
  findingRange: ({ pressure, flow, low, high }) =>
    `A ${pressure} los ductos pierden ${flow}; la línea permite de ${low} a ${high}.`,
  point: ({ number, pressure, flow, state }) => `Paso ${number}: ${flow} a ${pressure}, ${state}`,
};

export const TEST_POINTS_WORDS: Readonly<Record<Language, TestPointsWords>> = { en: EN, es: ES };
