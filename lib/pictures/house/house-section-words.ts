import type { Side } from "#lib/job/duct-system.ts";
import { PLACE_LABELS, type PlaceKind } from "#lib/job/place.ts";
import type { Language } from "../scene.ts";

export interface HouseSectionWords {
  title: string;
  note: string;
  place: Readonly<Record<PlaceKind, string>>;
  side: Readonly<Record<Side, string>>;
  open: string;
  sealed: string;
  notYetFound: string;
  caption: string;
  columns: readonly [string, string, string, string, string];
  nothingOpen: string;
  allSealed(count: number): string;
  someSealed(count: { sealed: number; all: number; cfm: string }): string;
  largest(leak: { label: string; cfm: string; share: string }): string;
  onlyOne(leak: { label: string; cfm: string }): string;
  mostNotFound(cell: { side: string; cfm: string }): string;
  disc(leak: { number: number; label: string; cfm: string; state: string }): string;
}

const EN: HouseSectionWords = {
  title: "Where the air goes",
  note: "Circle area is leakage at 25 Pa; ribbon width is air flow. Full ribbons carry air to the rooms, hollow ones bring it back. Rooms and openings are not to scale.",
  place: PLACE_LABELS,
  side: { supply: "supply", return: "return" },
  open: "open",
  sealed: "sealed",
  notYetFound: "not yet found",
  caption: "Leaks in this drawing",
  columns: ["Leak", "Where", "Side", "Leakage at 25 Pa (cfm)", "State"],
  nothingOpen: "No leak has been entered yet.",
  allSealed: (count) =>
    count === 1 ? "The leak that was found is sealed." : `All ${count} leaks that were found are sealed.`,
  someSealed: ({ sealed, all, cfm }) =>
    `${sealed} of ${all} leaks ${sealed === 1 ? "is" : "are"} sealed; ${cfm} at 25 Pa is still open.`,
  largest: ({ label, cfm, share }) => `The largest leak is number ${label}: ${cfm} at 25 Pa, ${share} of what is open.`,
  onlyOne: ({ label, cfm }) => `One leak is open, number ${label}: ${cfm} at 25 Pa.`,
  mostNotFound: ({ side, cfm }) => `Most of the leakage is not yet found: ${cfm} at 25 Pa on the ${side} side.`,
  disc: ({ number, label, cfm, state }) => `Leak ${number}: ${label}, ${cfm} at 25 Pa, ${state}`,
};

const ES: HouseSectionWords = {
  title: "A dónde va el aire",
  note: "El área del círculo es la fuga a 25 Pa; el ancho de la cinta es el flujo de aire. Las cintas llenas llevan aire a los cuartos, las huecas lo devuelven. Los cuartos y las rejillas no están a escala.",
  place: {
    conditioned: "dentro de los cuartos",
    attic: "ático",
    "vented-crawlspace": "espacio bajo el piso, ventilado",
    "unvented-crawlspace": "espacio bajo el piso, sellado",
    basement: "sótano",
    garage: "garaje",
    belly: "vientre bajo el piso",
    "joist-space": "entre las vigas de los pisos",
    "below-slab": "bajo la losa",
    outside: "al aire libre",
  },
  side: { supply: "suministro", return: "retorno" },
  open: "abierta",
  sealed: "sellada",
  notYetFound: "aún no encontrada",
  caption: "Fugas en este dibujo",
  columns: ["Fuga", "Lugar", "Lado", "Fuga a 25 Pa (cfm)", "Estado"],
  nothingOpen: "Todavía no se ha anotado ninguna fuga.",
  allSealed: (count) =>
    count === 1 ? "La fuga encontrada está sellada." : `Las ${count} fugas encontradas están selladas.`,
  someSealed: ({ sealed, all, cfm }) =>
    `${sealed} de ${all} fugas ${sealed === 1 ? "está sellada" : "están selladas"}; siguen abiertos ${cfm} a 25 Pa.`,
  largest: ({ label, cfm, share }) =>
    `La fuga más grande es la número ${label}: ${cfm} a 25 Pa, ${share} de lo que está abierto.`,
  onlyOne: ({ label, cfm }) => `Hay una fuga abierta, la número ${label}: ${cfm} a 25 Pa.`,
  mostNotFound: ({ side, cfm }) => `La mayor parte aún no se ha encontrado: ${cfm} a 25 Pa en el lado de ${side}.`,
  disc: ({ number, label, cfm, state }) => `Fuga ${number}: ${label}, ${cfm} a 25 Pa, ${state}`,
};

export const HOUSE_SECTION_WORDS: Readonly<Record<Language, HouseSectionWords>> = { en: EN, es: ES };
