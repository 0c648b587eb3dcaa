import type { DuctPart } from "#lib/job/leak-site.ts";
import type { PlaceKind } from "#lib/job/place.ts";
import type { Cfm } from "#lib/units/quantity.ts";
import { type Box, circleBox, isWithin, overlaps } from "../boxes.ts";
import { isCompact } from "../scene.ts";
import { regionOf } from "./air-handlers.ts";
import type { DuctGroup } from "./duct-group.ts";
import type { DuctLayout } from "./duct-layout.ts";
import { cabinetSpots, pointOnDuct } from "./duct-spots.ts";
import { type HouseFrame, placeKindOf } from "./house-frame.ts";
import type { HouseSectionInput, SectionLeak } from "./house-section-input.ts";
import type { Point } from "./lanes.ts";

/** A leak as it is drawn: its area is its leakage at 25 Pa. */
export interface LeakDisc {
  id: string;
  systemId: string;
  cx: number;
  cy: number;
  r: number;
  /** Where it sits on the duct, when there was no room for the disc on the spot itself. */
  anchor: Point | undefined;
  leak: SectionLeak | undefined;
  cfm25: Cfm;
}

/** No leak fills the picture, and a picture of small leaks does not blow them up. */
const LEAST_FULL_SCALE_CFM = 90;
const GAP = 3;

/** Radius per root of cfm, the same for every leak of the house, before and after. */
function discScale({ input, frame }: { input: HouseSectionInput; frame: HouseFrame }): number {
  const flows = input.systems.flatMap((s) => [
    ...s.leaks.map((leak) => leak.cfm25),
    ...s.notYetFound.map((cell) => cell.cfm25),
  ]);
  const largestRadius = isCompact(frame) ? 17 : 25;
  return largestRadius / Math.sqrt(Math.max(LEAST_FULL_SCALE_CFM, ...flows));
}

/** Puts every disc on its duct, largest first, so that none covers another. */
export function placeDiscs({
  input,
  frame,
  layout,
}: {
  input: HouseSectionInput;
  frame: HouseFrame;
  layout: DuctLayout;
}): LeakDisc[] {
  const scale = discScale({ input, frame });
  const wanted = input.systems
    .flatMap((system) => [
      ...system.leaks.map((leak) => ({ id: leak.id, systemId: system.id, cfm25: leak.cfm25, side: leak.side, leak })),
      ...system.notYetFound.map(({ cfm25, side }) => ({
        id: `${system.id}-${side}-not-yet-found`,
        systemId: system.id,
        cfm25,
        side,
        leak: undefined,
      })),
    ])
    .filter(({ cfm25 }) => cfm25 > 0)
    .sort((a, b) => rankOf(b.leak) - rankOf(a.leak) || b.cfm25 - a.cfm25 || (a.id < b.id ? -1 : 1));

  const placed: LeakDisc[] = [];
  for (const { id, systemId, cfm25, side, leak } of wanted) {
    const r = scale * Math.sqrt(cfm25);
    const isIndoors = leak === undefined || !OUTDOOR_PLACES.includes(placeKindOf(input, leak.placeId));
    const spots = spotsFor({ input, frame, layout, systemId, side, leak }).map((spot) =>
      isIndoors ? keepIndoors({ spot, r, frame }) : spot,
    );
    const machines = layout.airHandlers.map(({ box }) => box);
    const spot = findRoom({ spots, r, placed, frame, machines });
    placed.push({ id, systemId, cfm25, leak, r, ...spot });
  }
  return placed;
}

/** What somebody put where it is goes first, then what was found, then what was not. */
const rankOf = (leak: SectionLeak | undefined): number => (leak ? (leak.drawnAt ? 2 : 1) : 0);

const OUTDOOR_PLACES: readonly PlaceKind[] = ["garage", "outside"];

/** A large disc at the end of a run moves in along the run until it stands within the walls. */
function keepIndoors({ spot, r, frame }: { spot: Point; r: number; frame: HouseFrame }): Point {
  const isBetweenWalls = spot.x >= frame.left && spot.x <= frame.right;
  if (!isBetweenWalls) return spot;
  return { x: Math.min(frame.right - r - 4, Math.max(frame.left + r + 4, spot.x)), y: spot.y };
}

function spotsFor({
  input,
  frame,
  layout,
  systemId,
  side,
  leak,
}: {
  input: HouseSectionInput;
  frame: HouseFrame;
  layout: DuctLayout;
  systemId: string;
  side: "supply" | "return";
  leak: SectionLeak | undefined;
}): readonly Point[] {
  const onSide = layout.groups.filter((group) => group.systemId === systemId && group.side === side);
  const kind = leak ? placeKindOf(input, leak.placeId) : undefined;
  const inPlace = onSide.filter((group) => kind === undefined || group.placeKind === kind);
  const groups = [...(inPlace.length > 0 ? inPlace : onSide)].sort((a, b) => widthOf(b) - widthOf(a));
  const handler = layout.airHandlers.find((one) => one.systemId === systemId);
  const isAtHandler = handler !== undefined && (kind === undefined || handler.placeKind === kind);
  const cabinet = isAtHandler && handler ? cabinetSpots(handler.box, side) : [];

  const putAt = leak?.drawnAt && pointOnDuct({ layout, systemId, side, placeKind: kind, drawnAt: leak.drawnAt });
  if (putAt) return [putAt];
  const spot = leak?.drawnAt?.part ?? leak?.spot ?? "trunk";
  const usual = usualSpots({ groups, cabinet, spot });
  if (usual.length > 0) return usual;
  const { box } = regionOf(frame, kind ?? "conditioned");
  return [{ x: box.x + box.width / 2, y: box.y + box.height * 0.6 }];
}

function usualSpots({
  groups,
  cabinet,
  spot,
}: {
  groups: readonly DuctGroup[];
  cabinet: readonly Point[];
  spot: DuctPart;
}): readonly Point[] {
  if (spot === "cabinet" && cabinet.length > 0)
    return [...cabinet, ...groups.flatMap((group) => pointsOf(group, "plenum"))];
  const points = groups.flatMap((group) => pointsOf(group, spot === "cabinet" ? "plenum" : spot));
  return points.length > 0 ? points : cabinet;
}

const NEXT_BEST: Readonly<Record<Exclude<DuctPart, "cabinet">, readonly Exclude<DuctPart, "cabinet">[]>> = {
  plenum: ["plenum", "trunk", "take-off", "boot"],
  trunk: ["trunk", "take-off", "plenum", "boot"],
  "take-off": ["take-off", "trunk", "boot", "plenum"],
  boot: ["boot", "take-off", "trunk", "plenum"],
};

/** The farthest spot first, so that small leaks do not crowd around the air handler. */
function pointsOf(group: DuctGroup, spot: Exclude<DuctPart, "cabinet">): Point[] {
  return NEXT_BEST[spot].flatMap((kind) => [...group.spots[kind]].reverse());
}

function widthOf(group: DuctGroup): number {
  return group.lanes.reduce((sum, lane) => sum + lane.width, 0);
}

const DIRECTIONS = Array.from({ length: 12 }, (_, index) => (index * Math.PI) / 6);
const FARTHEST_STEP = 14;

/** The first free spot; else the nearest free place around one; else the first spot, whatever it covers. */
function findRoom({
  spots,
  r,
  placed,
  frame,
  machines,
}: {
  spots: readonly Point[];
  r: number;
  placed: readonly LeakDisc[];
  frame: HouseFrame;
  machines: readonly Box[];
}) {
  const sheet: Box = { x: 1, y: 1, width: frame.width - 2, height: frame.height - 2 };
  const isFree = ({ x, y }: Point) =>
    isWithin(circleBox({ cx: x, cy: y, r }), sheet) &&
    placed.every((disc) => Math.hypot(disc.cx - x, disc.cy - y) >= disc.r + r + GAP);

  const free = spots.find(isFree);
  if (free) return { cx: free.x, cy: free.y, anchor: undefined };
  for (let step = 1; step <= FARTHEST_STEP; step += 1) {
    for (const spot of spots) {
      for (const direction of DIRECTIONS) {
        const point = { x: spot.x + step * 6 * Math.cos(direction), y: spot.y + step * 6 * Math.sin(direction) };
        const coversMachine = machines.some((box) => overlaps(circleBox({ cx: point.x, cy: point.y, r }), box));
        if (!coversMachine && isFree(point)) return { cx: point.x, cy: point.y, anchor: spot };
      }
    }
  }
  const spot = spots[0] ?? { x: frame.width / 2, y: frame.height / 2 };
  return { cx: spot.x, cy: spot.y, anchor: undefined };
}
