import type { Citation } from "#lib/sources/source.ts";

/** What must be true before a repair starts. */
export const PREREQUISITE_IDS = [
  "dry",
  "clean",
  "accessible",
  "asbestos-cleared",
  "system-off",
  "fastened-first",
  "large-gaps-closed",
  "registers-masked",
  "people-and-animals-out",
  "combustion-tested",
] as const;
export type PrerequisiteId = (typeof PREREQUISITE_IDS)[number];

interface Rule {
  text: string;
  source: Citation;
}

const practice: Citation = { sourceId: "practice" };
const specification: Citation = { sourceId: "sws-duct-sealing" };

export const PREREQUISITES: Readonly<Record<PrerequisiteId, Rule>> = {
  dry: { text: "The surface is dry, and what made it wet is put right.", source: practice },
  clean: { text: "Dust, oil and old tape are off; sealant holds on clean surfaces only.", source: specification },
  accessible: {
    text: "A hand and a brush reach the whole gap; insulation is pushed aside and put back.",
    source: specification,
  },
  "asbestos-cleared": {
    text: "Nothing near the joint may hold asbestos or vermiculite, or licensed people have cleared it.",
    source: practice,
  },
  "system-off": { text: "The air handler is off at its switch.", source: practice },
  "fastened-first": {
    text: "The joint is held by screws, straps or bands before it is sealed.",
    source: specification,
  },
  "large-gaps-closed": { text: "Gaps wider than the spray can bridge are closed by hand first.", source: practice },
  "registers-masked": { text: "Registers, coil and blower are masked or isolated from the spray.", source: practice },
  "people-and-animals-out": {
    text: "People and animals are out of the house while it is sprayed and aired.",
    source: practice,
  },
  "combustion-tested": {
    text: "Appliances that burn fuel are tested before and after; the local protocol governs.",
    source: practice,
  },
};

/** What is never done, whatever else an organization edits. */
export const NEVER_IDS = [
  "cloth-tape",
  "combustion-air-opening",
  "appliance-vent",
  "fire-damper",
  "service-panel-shut",
  "condensate-drain",
  "suspected-asbestos",
  "spray-without-log",
] as const;
export type NeverId = (typeof NEVER_IDS)[number];

export const NEVERS: Readonly<Record<NeverId, Rule>> = {
  "cloth-tape": {
    text: "Never cloth duct tape: it was the sealant that failed when many were aged side by side.",
    source: { sourceId: "lbnl-duct-sealants", locator: "abstract" },
  },
  "combustion-air-opening": {
    text: "Never close an opening that lets air in for a furnace, boiler or water heater.",
    source: practice,
  },
  "appliance-vent": { text: "Never seal, bend or disturb the vent of an appliance that burns fuel.", source: practice },
  "fire-damper": { text: "Never seal over a fire or smoke damper.", source: specification },
  "service-panel-shut": {
    text: "Never glue a service panel shut: use a gasket or a listed tape that can be taken off.",
    source: practice,
  },
  "condensate-drain": { text: "Never close a drain of the coil or its overflow.", source: practice },
  "suspected-asbestos": { text: "Never brush, cut or scrape what may hold asbestos. Stop.", source: practice },
  "spray-without-log": {
    text: "Never spray without a log of pressure and flow from start to end.",
    source: practice,
  },
};

/** They hold for every repair and cannot be edited away. */
const ALWAYS_NEVER: readonly NeverId[] = [
  "cloth-tape",
  "combustion-air-opening",
  "appliance-vent",
  "suspected-asbestos",
];

/** Everything that a repair must never be done with or to. */
export function neverOf(repair: { never: readonly NeverId[] }): NeverId[] {
  return [...new Set([...ALWAYS_NEVER, ...repair.never])];
}
