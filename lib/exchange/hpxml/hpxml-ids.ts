import type { Moment } from "./hpxml-words.ts";

/** Content of one XML element: children by name, attributes with “@”, a list where an element repeats. */
export type Tree = { readonly [name: string]: unknown };

/** Whose ids the identifier values are, so that they are known again when the file comes back. */
export const SENDER = "Ductmend id";

/** A place in the file that others refer to; with our own id where the thing has one. */
export function identifier(xmlId: string, ownId?: string): Tree {
  return {
    "@id": xmlId,
    ...(ownId && { SendingSystemIdentifierType: SENDER, SendingSystemIdentifierValue: ownId }),
  };
}

/** Ids within the file are made of positions: ids of a job may begin with a digit, those of XML may not. */
export const xmlIds = (moment: Moment) => ({
  building: `${moment}.building`,
  site: `${moment}.site`,
  infiltration: `${moment}.infiltration`,
  naturalInfiltration: `${moment}.infiltration-natural`,
  station: `${moment}.station`,
  control: `${moment}.control`,
  heating: (system: number) => `${moment}.system${system}.heating`,
  cooling: (system: number) => `${moment}.system${system}.cooling`,
  heatPump: (system: number) => `${moment}.system${system}.heat-pump`,
  ducts: (system: number) => `${moment}.system${system}.ducts`,
  run: (system: number, run: number) => `${moment}.system${system}.run${run}`,
});
