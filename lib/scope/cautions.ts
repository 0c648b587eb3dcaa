import type { LeakKindId } from "#lib/job/leak-kinds.ts";
import type { LeakSite } from "#lib/job/leak-site.ts";
import type { PlaceKind } from "#lib/job/place.ts";
import type { Citation } from "#lib/sources/source.ts";

/** One leak as the cautions look at it. */
export interface CautionSite extends Pick<LeakSite, "id" | "kind" | "side" | "isSuspectedAsbestos"> {
  placeKind: PlaceKind;
}

export interface CautionFacts {
  /** Absent: nobody said, and the caution holds. */
  hasCombustionAppliance?: boolean;
  builtYear?: number;
  sites: readonly CautionSite[];
  spraysFromInside: boolean;
}

export interface ScopeCaution {
  id: CautionId;
  title: string;
  text: string;
  /** Sites it belongs to; empty when it holds for the whole job. */
  appliesTo: readonly string[];
  source: Citation;
}

interface CautionRule {
  id: string;
  title: string;
  text: string;
  /** Null: it does not hold for this job. */
  appliesTo: (facts: CautionFacts) => readonly string[] | null;
}

const always = () => [];
const inPlaces =
  (...kinds: readonly PlaceKind[]) =>
  ({ sites }: CautionFacts) =>
    atSites(sites, ({ placeKind }) => kinds.includes(placeKind));
const ofKinds =
  (...kinds: readonly LeakKindId[]) =>
  ({ sites }: CautionFacts) =>
    atSites(sites, ({ kind }) => kinds.includes(kind));

function atSites(sites: readonly CautionSite[], holds: (site: CautionSite) => boolean): string[] | null {
  const ids = sites.filter(holds).map(({ id }) => id);
  return ids.length > 0 ? ids : null;
}

/** Homes built before this year may well hold asbestos in duct wrap, tape and paper. Source: practice. */
const ASBESTOS_YEAR = 1981;

const RULES = [
  {
    id: "local-rules",
    title: "Local codes and licensed practice govern",
    text: "Where this plan and the adopted code, a permit or a license requirement differ, they govern and not the plan.",
    appliesTo: always,
  },
  {
    id: "combustion-test",
    title: "Test appliances that burn fuel, before and after",
    text: "Sealing changes house pressures. A qualified person tests draft, spillage and carbon monoxide before the work starts and after it ends; the local protocol and its limits govern. Do not leave a house that fails.",
    appliesTo: ({ hasCombustionAppliance }) => (hasCombustionAppliance === false ? null : []),
  },
  {
    id: "co-alarm",
    title: "A working carbon monoxide alarm",
    text: "A listed carbon monoxide alarm works outside the bedrooms before the crew leaves, as local rules require.",
    appliesTo: ({ hasCombustionAppliance }) => (hasCombustionAppliance === false ? null : []),
  },
  {
    id: "return-near-combustion",
    title: "Return leaks beside an appliance that burns fuel",
    text: "A leaking or newly opened return can pull exhaust out of a vent. Seal it first, test afterwards, and never leave a return open in the room of the appliance.",
    appliesTo: ({ hasCombustionAppliance, sites }) =>
      hasCombustionAppliance === false
        ? null
        : atSites(
            sites,
            ({ side, placeKind }) => side === "return" && ["garage", "basement", "conditioned"].includes(placeKind),
          ),
  },
  {
    id: "garage-return",
    title: "No return air from a garage",
    text: "Close every return opening and leak in a garage: exhaust and fuel vapor must not reach the rooms.",
    appliesTo: ({ sites }) => atSites(sites, ({ side, placeKind }) => side === "return" && placeKind === "garage"),
  },
  {
    id: "asbestos-suspected",
    title: "Stop: material that may hold asbestos",
    text: "Do not brush, cut, tape over or disturb it. Only licensed people sample and remove it. The work at this spot starts after they have cleared it in writing.",
    appliesTo: ({ sites }) => atSites(sites, ({ isSuspectedAsbestos }) => isSuspectedAsbestos === true),
  },
  {
    id: "asbestos-age",
    title: "Old duct wrap, tape and loose insulation",
    text: "In a home of this age, gray paper or tape on ducts may hold asbestos, and pebble-like loose fill may be vermiculite that does. If in doubt, stop and call licensed people.",
    appliesTo: ({ builtYear }) => (builtYear === undefined || builtYear < ASBESTOS_YEAR ? [] : null),
  },
  {
    id: "electricity",
    title: "Electricity",
    text: "Switch the air handler off and keep it off while a hand is inside. Look for bare wires before reaching in; a licensed electrician mends what is damaged.",
    appliesTo: always,
  },
  {
    id: "attic-heat",
    title: "Heat in the attic",
    text: "Work early, drink, rest, never alone. Leave at the first dizziness. Step on framing only.",
    appliesTo: inPlaces("attic"),
  },
  {
    id: "crawlspace",
    title: "Crawlspaces and bellies",
    text: "Look for standing water, gas smell, sewage, animals and wiring before going in. Someone stays outside within call.",
    appliesTo: inPlaces("vented-crawlspace", "unvented-crawlspace", "belly", "below-slab"),
  },
  {
    id: "manufactured-home-support",
    title: "Under a manufactured home",
    text: "Go under only where the home stands on its piers and anchors as built. Never lift or shim it to gain room.",
    appliesTo: ofKinds("crossover", "belly"),
  },
  {
    id: "ladders",
    title: "Ladders",
    text: "Set ladders on firm ground, tied or held; three points of contact.",
    appliesTo: inPlaces("attic", "joist-space", "outside"),
  },
  {
    id: "insulation",
    title: "Insulation",
    text: "Wear a respirator, gloves, goggles and sleeves. Put every piece back where it was, dry and whole.",
    appliesTo: inPlaces("attic", "vented-crawlspace", "unvented-crawlspace", "belly"),
  },
  {
    id: "mold",
    title: "Mold and damp",
    text: "Where mold or wet material is seen, find and stop the water first. Large areas are for people trained to remove them.",
    appliesTo: always,
  },
  {
    id: "fresh-air",
    title: "Fresh air after tightening",
    text: "Leaky ducts also aired the house. Check afterwards that it still gets the fresh air the local rules ask for.",
    appliesTo: always,
  },
  {
    id: "static-pressure",
    title: "Static pressure after sealing",
    text: "Tighter ducts raise static pressure. Measure it after the work; above the nameplate, more duct or a lower blower setting comes before leaving.",
    appliesTo: always,
  },
  {
    id: "spraying",
    title: "Spraying sealant from inside",
    text: "People, pets and plants are out, smoke alarms bagged and unbagged again, rooms aired by the maker's directions. Keep the log of pressure and flow.",
    appliesTo: ({ spraysFromInside }) => (spraysFromInside ? [] : null),
  },
] as const satisfies readonly CautionRule[];

export type CautionId = (typeof RULES)[number]["id"];

/**
 * The cautions that hold for a job, each with the spots where it matters. They follow from the facts alone: nothing
 * switches one off. What is not known counts as present. Source: practice; local rules govern.
 */
export function cautionsFor(facts: CautionFacts): ScopeCaution[] {
  return RULES.flatMap(({ id, title, text, appliesTo }) => {
    const sites = (appliesTo as CautionRule["appliesTo"])(facts);
    return sites === null ? [] : [{ id, title, text, appliesTo: sites, source: { sourceId: "practice" as const } }];
  });
}
