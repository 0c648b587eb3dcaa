import type { PlaceKind } from "#lib/job/place.ts";
import type { Box } from "../boxes.ts";
import { isCompact } from "../scene.ts";
import type { HouseSectionInput } from "./house-section-input.ts";

/** A place in the cut: where an air handler can stand in it, and how ducts lie in it. */
export interface Region {
  box: Box;
  /** The side of the trunk that faces the rooms. */
  trunkEdgeY: number;
  /** How far a trunk may reach, left and right. */
  reach: { left: number; right: number };
  /** Where the air enters the rooms, and on which side of the trunk that is. */
  openingY: number;
  opens: "down" | "up" | "sideways";
}

export interface HouseFrame {
  width: number;
  height: number;
  left: number;
  right: number;
  eaveY: number;
  ridgeY: number;
  floorY: number;
  gradeY: number;
  bottomY: number;
  /** Ground storey first. */
  storeys: readonly Box[];
  roof: "gable" | "low" | "flat";
  garage: Box | undefined;
  regions: ReadonlyMap<PlaceKind, Region>;
}

/** Thickness of the fluff on an attic floor, as drawn. */
export const INSULATION_DEPTH = 9;
/** The clear height between a ceiling or floor and a trunk beside it. */
const TRUNK_CLEARANCE = 7;

/** Lays the cut out: roof over storeys over what is under the floor, with the garage at the right. */
export function layOutHouse({ input, width }: { input: HouseSectionInput; width: number }): HouseFrame {
  const compact = isCompact({ width });
  const has = (kind: PlaceKind) => input.places.some((place) => place.kind === kind);
  const isOutdoorUnit = input.systems.some((system) => placeKindOf(input, system.airHandlerPlaceId) === "outside");

  const eaves = eavesOf({ width });
  const margin = compact ? 8 : 26;
  const garageWidth = has("garage") ? (width - 2 * margin) * 0.25 : 0;
  const left = margin + eaves + (isOutdoorUnit || has("outside") ? (compact ? 50 : 84) : 0);
  const right = width - margin - (garageWidth > 0 ? garageWidth + 6 : eaves);

  const storeysCount = Math.min(4, Math.max(1, Math.round(input.storeysCount)));
  const storeyHeight = (compact ? [104, 84, 70, 62] : [132, 104, 84, 72])[storeysCount - 1] ?? 72;
  const joistDepth = has("joist-space") ? (compact ? 18 : 24) : 6;
  const roof = input.kind === "manufactured" ? "low" : input.kind === "multifamily" && !has("attic") ? "flat" : "gable";
  const rise = roofRise({ roof, hasAttic: has("attic"), compact, span: right - left });
  const ridgeY = compact ? 12 : 16;
  const eaveY = ridgeY + rise;

  const storeys: Box[] = [];
  let y = eaveY;
  for (let index = storeysCount - 1; index >= 0; index -= 1) {
    storeys.unshift({ x: left, y, width: right - left, height: storeyHeight });
    y += storeyHeight + (index > 0 ? joistDepth : 0);
  }
  const floorY = y;
  const under = layOutUnderFloor({ has, floorY, left, right, compact, isManufactured: input.kind === "manufactured" });
  const ground = storeys[0] as Box;
  const garage = has("garage")
    ? { x: right, y: floorY - (compact ? 84 : 104), width: garageWidth, height: compact ? 84 : 104 }
    : undefined;

  const regions = new Map<PlaceKind, Region>(under.regions);
  const ceilingY = eaveY;
  if (has("attic")) {
    const trunkEdgeY = ceilingY - INSULATION_DEPTH - 4;
    const slope = (right - left + 2 * eaves) / 2 / rise;
    const inset = Math.max(10, (ceilingY - trunkEdgeY + 30) * slope - eaves);
    regions.set("attic", {
      box: { x: left, y: ridgeY, width: right - left, height: rise },
      trunkEdgeY,
      reach: { left: left + inset, right: right - inset },
      openingY: ceilingY,
      opens: "down",
    });
  }
  const soffit: Region = {
    box: ground,
    trunkEdgeY: ground.y + TRUNK_CLEARANCE + 24,
    reach: { left: left + 22, right: right - 22 },
    openingY: ground.y + TRUNK_CLEARANCE + 38,
    opens: "down",
  };
  regions.set("conditioned", soffit);
  if (has("joist-space")) {
    const isBetweenStoreys = storeysCount > 1;
    const joists = { ...soffit, trunkEdgeY: ground.y - 3, openingY: ground.y };
    regions.set("joist-space", isBetweenStoreys ? joists : soffit);
  }
  if (garage) {
    regions.set("garage", {
      box: garage,
      trunkEdgeY: garage.y + 28,
      reach: { left: garage.x, right: garage.x + garage.width - 12 },
      openingY: garage.y + 28,
      opens: "sideways",
    });
  }
  const yard = { x: 2, y: floorY - storeyHeight, width: left - 4, height: storeyHeight };
  regions.set("outside", {
    box: yard,
    trunkEdgeY: floorY - storeyHeight * 0.5,
    reach: { left: 10, right: left },
    openingY: floorY - storeyHeight * 0.5,
    opens: "sideways",
  });

  const { gradeY, bottomY } = under;
  return {
    width,
    height: bottomY + (has("outside") ? 8 : 0),
    left,
    right,
    eaveY,
    ridgeY,
    floorY,
    gradeY,
    bottomY,
    storeys,
    roof,
    garage,
    regions,
  };
}

/** How far the roof stands out over the walls. */
export function eavesOf({ width }: { width: number }): number {
  return isCompact({ width }) ? 14 : 26;
}

export function placeKindOf(input: HouseSectionInput, placeId: string | undefined): PlaceKind {
  return input.places.find((place) => place.id === placeId)?.kind ?? "conditioned";
}

function roofRise({
  roof,
  hasAttic,
  compact,
  span,
}: {
  roof: HouseFrame["roof"];
  hasAttic: boolean;
  compact: boolean;
  span: number;
}) {
  if (roof === "flat") return 16;
  // Two ducts side by side need their room under the lowest roof too.
  if (roof === "low") return hasAttic ? Math.max(62, span * 0.17) : span * 0.1;
  const rise = span * (hasAttic ? 0.27 : 0.2);
  return Math.min(compact ? 104 : 156, Math.max(hasAttic ? 84 : 50, rise));
}

const UNDER_FLOOR = ["basement", "vented-crawlspace", "unvented-crawlspace", "belly", "below-slab"] as const;

export function isUnderFloor(kind: PlaceKind): boolean {
  return UNDER_FLOOR.some((under) => under === kind);
}

function layOutUnderFloor({
  has,
  floorY,
  left,
  right,
  compact,
  isManufactured,
}: {
  has: (kind: PlaceKind) => boolean;
  floorY: number;
  left: number;
  right: number;
  compact: boolean;
  isManufactured: boolean;
}): { regions: [PlaceKind, Region][]; gradeY: number; bottomY: number } {
  const present = UNDER_FLOOR.filter(has);
  const heights = {
    basement: compact ? 84 : 104,
    crawl: compact ? 48 : 58,
    belly: compact ? 26 : 30,
    slab: compact ? 34 : 40,
  };
  const heightOf = (kind: (typeof UNDER_FLOOR)[number]) =>
    kind === "basement"
      ? heights.basement
      : kind === "belly"
        ? heights.belly
        : kind === "below-slab"
          ? heights.slab
          : heights.crawl;

  const share = (right - left) / Math.max(1, present.length);
  const regions = present.map((kind, index): [PlaceKind, Region] => {
    const box = { x: left + index * share, y: floorY, width: share, height: heightOf(kind) };
    const reach = { left: box.x + 18, right: box.x + box.width - 18 };
    const trunkEdgeY = floorY + (kind === "belly" ? 4 : kind === "below-slab" ? 14 : TRUNK_CLEARANCE);
    return [kind, { box, trunkEdgeY, reach, openingY: floorY, opens: "up" }];
  });

  const deepest = Math.max(0, ...present.map(heightOf));
  const hasRoomBelow = present.includes("basement");
  const hasCrawl = present.includes("vented-crawlspace") || present.includes("unvented-crawlspace");
  const piers = isManufactured ? (compact ? 18 : 22) : 0;
  const gradeY = isManufactured
    ? floorY + (present.includes("belly") ? heights.belly : 8) + piers
    : hasRoomBelow
      ? floorY + 12
      : hasCrawl
        ? floorY + heights.crawl * 0.5
        : floorY + 5;
  const bottomY = Math.max(floorY + deepest, gradeY) + (compact ? 24 : 30);
  return { regions, gradeY, bottomY };
}
