import type { LeakKindId } from "#lib/job/leak-kinds.ts";
import type { DuctPart } from "#lib/job/leak-site.ts";
import { PLACE_LABELS, type PlaceKind } from "#lib/job/place.ts";
import type { DuctSpot } from "#lib/pictures/house/duct-spots.ts";
import { type Draft, listAt, newId, textAt } from "../draft.ts";

/** A stretch of the ducts where one can stand: a side in a place, or the air handler. */
export interface LeakSpot {
  id: string;
  label: string;
  systemId: string;
  side: string;
  placeId: string;
  /** What one sees there most often. */
  kind: LeakKindId;
}

const SIDE_WORDS: Readonly<Record<string, string>> = { supply: "Supply", return: "Return" };

/** Every stretch of the ducts of a job, in walking order: from the air handler outward, system by system. */
export function leakSpots(draft: Draft): LeakSpot[] {
  const systems = listAt(draft, "systems");
  const placeWords = (placeId: string) => placeWordsOf(draft, placeId);
  const all = systems.flatMap((system): LeakSpot[] => {
    const systemId = String(system.id);
    const of = systems.length > 1 ? `, ${textAt(system, "label") ?? systemId}` : "";
    const handlerPlace = textAt(system, "airHandlerPlaceId");
    const handler: LeakSpot[] = handlerPlace
      ? [
          {
            id: `${systemId} handler`,
            label: `Air handler, ${placeWords(handlerPlace)}${of}`,
            systemId,
            side: "return",
            placeId: handlerPlace,
            kind: "air-handler-cabinet",
          },
        ]
      : [];
    const runs = listAt(system, "runs").flatMap((run): LeakSpot[] => {
      const [side, placeId] = [textAt(run, "side"), textAt(run, "placeId")];
      if (!side || !placeId) return [];
      return [
        {
          id: `${systemId} ${side} ${placeId}`,
          label: `${SIDE_WORDS[side] ?? side}, ${placeWords(placeId)}${of}`,
          systemId,
          side,
          placeId,
          kind: usualKind(side, placeKindOf(draft, placeId)),
        },
      ];
    });
    return [...handler, ...runs];
  });
  return all.filter((spot, index) => all.findIndex(({ id }) => id === spot.id) === index);
}

function usualKind(side: string, place: PlaceKind | undefined): LeakKindId {
  if (place === "belly") return "belly";
  return side === "return" ? "filter-slot" : "boot-to-drywall";
}

function placeKindOf(draft: Draft, placeId: string): PlaceKind | undefined {
  const place = listAt(draft, "places").find(({ id }) => id === placeId);
  return place && (textAt(place, "kind") as PlaceKind | undefined);
}

/** A place as its people call it. */
export function placeWordsOf(draft: Draft, placeId: string): string {
  const place = listAt(draft, "places").find(({ id }) => id === placeId);
  const kind = placeKindOf(draft, placeId);
  return (place && textAt(place, "label")) ?? (kind ? PLACE_LABELS[kind] : "");
}

/** What leaks most often at a part of the ducts. */
const KIND_AT_PART: Readonly<Record<DuctPart, LeakKindId>> = {
  cabinet: "air-handler-cabinet",
  plenum: "plenum-joint",
  trunk: "seam",
  "take-off": "take-off",
  boot: "boot-to-drywall",
};

/** Where a leak stands once it was put on the drawing. */
export function placeOfSpot({ systemId, side, placeId, part, alongShare }: DuctSpot): Draft {
  return { systemId, side, placeId, drawnAt: { part, alongShare } };
}

/** A new leak at a spot of the drawing. */
export function leakAtSpot(draft: Draft, spot: DuctSpot): Draft {
  const isInBelly = placeKindOf(draft, spot.placeId) === "belly";
  const kind = isInBelly ? "belly" : KIND_AT_PART[spot.part];
  return { id: newId(listAt(draft, "sites"), "leak"), ...placeOfSpot(spot), kind };
}

/** The next leak where one stands. Without runs, one usually finds it where one just was. */
export function leakAt(draft: Draft, spot: LeakSpot | undefined): Draft {
  const sites = listAt(draft, "sites");
  const id = newId(sites, "leak");
  if (spot) {
    const { systemId, side, placeId, kind } = spot;
    return { id, systemId, side, placeId, kind };
  }
  const last = sites.at(-1);
  const outside = listAt(draft, "places").find((place) => place.kind !== "conditioned");
  return {
    id,
    systemId: last?.systemId ?? listAt(draft, "systems")[0]?.id ?? "",
    side: last?.side ?? "supply",
    placeId: last?.placeId ?? outside?.id ?? listAt(draft, "places")[0]?.id ?? "",
    kind: "boot-to-drywall",
  };
}
