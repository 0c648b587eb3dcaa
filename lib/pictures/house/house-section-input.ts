import type { Side } from "#lib/job/duct-system.ts";
import type { House } from "#lib/job/house.ts";
import type { DrawnAt, DuctPart } from "#lib/job/leak-site.ts";
import type { PlaceKind } from "#lib/job/place.ts";
import type { Cfm } from "#lib/units/quantity.ts";

/** What the cut through one house has to know. Everything is read; nothing is guessed from the picture. */
export interface HouseSectionInput {
  kind: House["kind"];
  storeysCount: number;
  places: readonly SectionPlace[];
  /** Names of rooms, ground storey first. */
  rooms?: readonly (readonly string[])[];
  systems: readonly SectionSystem[];
}

export interface SectionPlace {
  id: string;
  kind: PlaceKind;
  label?: string;
  /** A word more, such as "118 °F". */
  note?: string;
}

export interface SectionSystem {
  id: string;
  /** Drawn beside the air handler; needed only where there are several. */
  label?: string;
  airHandlerPlaceId?: string;
  runs: readonly SectionRun[];
  leaks: readonly SectionLeak[];
  notYetFound: readonly { side: Side; cfm25: Cfm }[];
}

export interface SectionRun {
  id: string;
  side: Side;
  placeId: string;
  flowCfm: Cfm;
  /** How many rooms it opens into; three on the supply side and one on the return side when not said. */
  openingsCount?: number;
}

export interface SectionLeak {
  id: string;
  /** The number on the disc, the same on every list. */
  number: number;
  side: Side;
  placeId: string;
  cfm25: Cfm;
  label: string;
  state: "open" | "sealed";
  /** Where such a leak sits on the ducts. */
  spot?: DuctPart;
  /** Where somebody put this one; it goes before `spot`. */
  drawnAt?: DrawnAt;
}
