import type { PlaceKind } from "#lib/job/place.ts";
import type { Place } from "#lib/job/place-schema.ts";
import type { SourcedValue } from "#lib/sources/source.ts";

type Insulation = NonNullable<Place["insulation"]>;

const practice = (value: number, low: number, high: number, locator: string) =>
  ({ value, unit: "ratio", source: { sourceId: "practice", locator }, low, high }) as const satisfies SourcedValue;
/** Every insulation of the place makes the same difference: none. */
const whatever = (entry: SourcedValue) => ({ none: entry, "floor-or-ceiling": entry, walls: entry });

/**
 * Part of what the ducts lose to a place that comes back to the rooms, by place and what is insulated there.
 * Source: practice (form of ashrae-152, from memory), editable in the job. Not in that list, so our own judgment:
 * belly, joist space and below the slab, and floor insulation in an unvented crawlspace (taken as a basement's ceiling).
 */
export const REGAIN: Readonly<Record<PlaceKind, Readonly<Record<Insulation, SourcedValue>>>> = {
  outside: whatever(practice(0, 0, 0, "outdoors")),
  attic: whatever(practice(0.1, 0, 0.2, "attic")),
  garage: whatever(practice(0.1, 0, 0.2, "garage")),
  "vented-crawlspace": {
    none: practice(0.5, 0.3, 0.65, "vented crawlspace, uninsulated"),
    "floor-or-ceiling": practice(0.15, 0.05, 0.3, "vented crawlspace, insulated floor"),
    // Vents bypass insulated walls, so the floor above is what counts.
    walls: practice(0.5, 0.3, 0.65, "vented crawlspace, uninsulated floor"),
  },
  "unvented-crawlspace": {
    none: practice(0.6, 0.4, 0.75, "unvented crawlspace, uninsulated"),
    "floor-or-ceiling": practice(0.3, 0.15, 0.45, "own judgment: as a basement with an insulated ceiling"),
    walls: practice(0.75, 0.6, 0.9, "unvented crawlspace, insulated walls"),
  },
  basement: {
    none: practice(0.5, 0.35, 0.65, "basement, uninsulated"),
    "floor-or-ceiling": practice(0.3, 0.15, 0.45, "basement, insulated ceiling"),
    walls: practice(0.75, 0.6, 0.9, "basement, insulated walls"),
  },
  belly: whatever(practice(0.3, 0.1, 0.5, "own judgment: insulation lies below the ducts, often torn")),
  "joist-space": whatever(practice(0.8, 0.6, 0.95, "own judgment: between two heated floors, open to the rim")),
  "below-slab": whatever(practice(0.3, 0.1, 0.5, "own judgment: part returns through the slab")),
  conditioned: whatever(practice(1, 1, 1, "inside the rooms")),
};

/** The regain factor of a place: see REGAIN. */
export function regainFactorOf({ placeKind, insulation }: { placeKind: PlaceKind; insulation: Insulation }): number {
  return REGAIN[placeKind][insulation].value;
}
