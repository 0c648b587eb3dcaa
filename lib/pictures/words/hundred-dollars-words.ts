import type { Language } from "../scene.ts";

export type Use = "heating" | "cooling" | "heating and cooling";
export type Part = "rooms" | "regained" | "lost" | "blower";

export interface HundredDollarsWords {
  use: Readonly<Record<Use, string>>;
  part: Readonly<Record<Part, string>>;
  shortPart: Readonly<Record<Part, string>>;
  today: string;
  sealed: string;
  columns: readonly [string, string, string];
  /** Heading and caption in one: a house with heating and cooling has two of these pictures. */
  caption(use: string): string;
  findingToday(values: { use: string; rooms: string; lost: string }): string;
  findingBoth(values: { use: string; rooms: string; sealed: string }): string;
}

const EN: HundredDollarsWords = {
  use: { heating: "heating", cooling: "cooling", "heating and cooling": "heating and cooling" },
  part: {
    rooms: "reaches the rooms",
    regained: "lost, then partly comes back",
    lost: "lost to the outside",
    blower: "runs the blower",
  },
  shortPart: { rooms: "rooms", regained: "comes back", lost: "lost", blower: "blower" },
  today: "Today",
  sealed: "After sealing",
  columns: ["Where it goes", "Today ($)", "After sealing ($)"],
  caption: (use) => `Where each $100 for ${use} goes`,
  findingToday: ({ use, rooms, lost }) =>
    `Of every $100 for ${use}, ${rooms} reaches the rooms and ${lost} is lost to the outside.`,
  findingBoth: ({ use, rooms, sealed }) =>
    `Of every $100 for ${use}, ${rooms} reaches the rooms today; after sealing it is ${sealed}.`,
};

const ES: HundredDollarsWords = {
  use: {
    heating: "calefacción",
    cooling: "aire acondicionado",
    "heating and cooling": "calefacción y aire acondicionado",
  },
  part: {
    rooms: "llega a los cuartos",
    regained: "se pierde y vuelve en parte",
    lost: "se pierde afuera",
    blower: "mueve el ventilador",
  },
  shortPart: { rooms: "cuartos", regained: "vuelve", lost: "se pierde", blower: "ventilador" },
  today: "Hoy",
  sealed: "Después de sellar",
  columns: ["A dónde va", "Hoy ($)", "Después de sellar ($)"],
  caption: (use) => `A dónde van cada $100 de ${use}`,
  findingToday: ({ use, rooms, lost }) =>
    `De cada $100 de ${use}, ${rooms} llegan a los cuartos y ${lost} se pierden afuera.`,
  findingBoth: ({ use, rooms, sealed }) =>
    `De cada $100 de ${use}, hoy llegan ${rooms} a los cuartos; después de sellar serán ${sealed}.`,
};

export const HUNDRED_DOLLARS_WORDS: Readonly<Record<Language, HundredDollarsWords>> = { en: EN, es: ES };
