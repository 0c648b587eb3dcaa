import type { DuctRun, HeatingKind } from "#lib/job/duct-system.ts";
import type { House } from "#lib/job/house.ts";
import type { PlaceKind } from "#lib/job/place.ts";

/** Root of the version written. Source: hpxml-docs, schema 4.2. */
export const HPXML_NAMESPACE = "http://hpxmlonline.com/2023/09";
export const HPXML_VERSION = "4.2";

/** What a house description is of. Source: hpxml-docs, EventType. */
export const EVENTS = {
  before: "audit",
  proposed: "proposed workscope",
  after: "job completion testing/final inspection",
} as const;
export type Moment = keyof typeof EVENTS;

/** Duct places in the words of the standard. Source: hpxml-docs, DuctLocation. */
export const DUCT_LOCATIONS: Readonly<Record<PlaceKind, string>> = {
  conditioned: "conditioned space",
  attic: "attic - unconditioned",
  "vented-crawlspace": "crawlspace - vented",
  "unvented-crawlspace": "crawlspace - unvented",
  basement: "basement - unconditioned",
  garage: "garage - unconditioned",
  belly: "manufactured home belly",
  "joist-space": "interstitial space",
  "below-slab": "under slab",
  outside: "outside",
};

/** Further words that other programs write and that mean one of our places. */
const FURTHER_LOCATIONS: Readonly<Record<string, PlaceKind>> = {
  attic: "attic",
  "attic - vented": "attic",
  "attic - unvented": "attic",
  "attic - conditioned": "conditioned",
  basement: "basement",
  "basement - conditioned": "conditioned",
  "crawlspace - unconditioned": "vented-crawlspace",
  crawlspace: "vented-crawlspace",
  "crawlspace - conditioned": "conditioned",
  garage: "garage",
  "living space": "conditioned",
  "other exterior": "outside",
  "roof deck": "outside",
  "mechanical closet": "conditioned",
};

/** Places of an air handler that the standard has no word for are left out. Source: hpxml-docs, UnitLocation. */
export const UNIT_LOCATIONS: Readonly<Partial<Record<PlaceKind, string>>> = {
  conditioned: "conditioned space",
  attic: "attic - unconditioned",
  "vented-crawlspace": "crawlspace - vented",
  "unvented-crawlspace": "crawlspace - unvented",
  basement: "basement - unconditioned",
  garage: "garage - unconditioned",
  belly: "manufactured home belly",
  outside: "other exterior",
};

export function placeKindOf(location: string): PlaceKind | undefined {
  return keyOf(DUCT_LOCATIONS, location) ?? FURTHER_LOCATIONS[location];
}

/** Source: hpxml-docs, ResidentialFacilityType. */
export const FACILITIES: Readonly<Record<House["kind"], string>> = {
  "site-built": "single-family detached",
  manufactured: "manufactured home",
  multifamily: "apartment unit",
};
const FURTHER_FACILITIES: Readonly<Record<string, House["kind"]>> = {
  "single-family attached": "site-built",
  "2-4 unit building": "multifamily",
  "5+ unit building": "multifamily",
  "multi-family - uncategorized": "multifamily",
  "multi-family - town homes": "multifamily",
  "multi-family - condos": "multifamily",
  "studio unit": "multifamily",
};

export function houseKindOf(facility: string): House["kind"] | undefined {
  return keyOf(FACILITIES, facility) ?? FURTHER_FACILITIES[facility];
}

/** A cavity used as a duct has no word of its own. Source: hpxml-docs, DuctMaterial. */
export const DUCT_MATERIALS: Readonly<Partial<Record<NonNullable<DuctRun["material"]>, string>>> = {
  "sheet-metal": "sheet metal",
  flexible: "flexible",
  "duct-board": "duct board",
};
const FURTHER_MATERIALS: Readonly<Record<string, NonNullable<DuctRun["material"]>>> = {
  galvanized: "sheet-metal",
  fiberboard: "duct-board",
};

export function materialOf(word: string): DuctRun["material"] {
  return keyOf(DUCT_MATERIALS, word) ?? FURTHER_MATERIALS[word];
}

/** Source: hpxml-docs, FuelType. */
export const FURNACE_FUELS: Readonly<Partial<Record<HeatingKind, string>>> = {
  "gas-furnace": "natural gas",
  "propane-furnace": "propane",
  "oil-furnace": "fuel oil",
  "electric-furnace": "electricity",
};

/** Source: hpxml-docs, CompressorType. */
export const COMPRESSORS = { single: "single stage", "two-stage": "two stage", variable: "variable speed" } as const;

export function keyOf<Key extends string>(
  words: Readonly<Partial<Record<Key, string>>>,
  word: string | undefined,
): Key | undefined {
  return (Object.keys(words) as Key[]).find((key) => words[key] === word);
}
