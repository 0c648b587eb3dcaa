import type { LeakKindId } from "#lib/job/leak-kinds.ts";
import { PLACE_LABELS, type PlaceKind } from "#lib/job/place.ts";
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
  const places = listAt(draft, "places");
  const systems = listAt(draft, "systems");
  const kindOf = (placeId: string) =>
    textAt(places.find(({ id }) => id === placeId) ?? {}, "kind") as PlaceKind | undefined;
  const placeWords = (placeId: string) => {
    const place = places.find(({ id }) => id === placeId);
    const kind = kindOf(placeId);
    return (place && textAt(place, "label")) ?? (kind ? PLACE_LABELS[kind] : "");
  };
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
          kind: usualKind(side, kindOf(placeId)),
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
