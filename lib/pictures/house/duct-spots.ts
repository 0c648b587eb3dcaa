import type { Side } from "#lib/job/duct-system.ts";
import { type DrawnAt, DUCT_PARTS, type DuctPart } from "#lib/job/leak-site.ts";
import type { PlaceKind } from "#lib/job/place.ts";
import type { Box } from "../boxes.ts";
import type { DuctGroup } from "./duct-group.ts";
import type { DuctLayout } from "./duct-layout.ts";
import { placeKindOf } from "./house-frame.ts";
import type { HouseSectionInput } from "./house-section-input.ts";
import type { Point } from "./lanes.ts";
import type { LeakDisc } from "./leak-discs.ts";

/** A spot on the drawn ducts where a leak can be put. */
export interface DuctSpot extends DrawnAt, Point {
  id: string;
  systemId: string;
  side: Side;
  placeId: string;
  /** Which of the same parts it is, from the left. */
  number: number;
  count: number;
  /** Whether a leak stands there already. */
  isTaken: boolean;
}

/** Two spots closer than this look like one. */
const LEAST_APART = 9;

/** Every spot of the drawing where a leak can be put: system by system, each run of ducts from left to right. */
export function ductSpots({
  input,
  layout,
  discs,
}: {
  input: HouseSectionInput;
  layout: DuctLayout;
  discs: readonly LeakDisc[];
}): DuctSpot[] {
  const isTaken = ({ x, y }: Point) => discs.some(({ cx, cy, r }) => Math.hypot(cx - x, cy - y) < r + 3);
  const spot = (at: Omit<DuctSpot, "id" | "isTaken">): DuctSpot => ({
    ...at,
    id: [at.systemId, at.side, at.placeId, at.part, at.alongShare].join(" "),
    isTaken: isTaken(at),
  });
  return input.systems.flatMap((system) => {
    const systemId = system.id;
    const handler = layout.airHandlers.find((one) => one.systemId === systemId);
    const handlerPlaceId = system.airHandlerPlaceId;
    const cabinet =
      handler && handlerPlaceId
        ? (["return", "supply"] as const).flatMap((side) =>
            cabinetSpots(handler.box, side)
              .slice(0, 1)
              .map((point) =>
                spot({
                  ...point,
                  systemId,
                  side,
                  placeId: handlerPlaceId,
                  part: "cabinet",
                  alongShare: 0,
                  number: 1,
                  count: 1,
                }),
              ),
          )
        : [];
    const runs = layout.groups
      .filter((group) => group.systemId === systemId)
      .flatMap(({ side, placeKind, spots }) => {
        const run = system.runs.find((one) => one.side === side && placeKindOf(input, one.placeId) === placeKind);
        return run ? spotsOfGroup(spots).map((at) => spot({ ...at, systemId, side, placeId: run.placeId })) : [];
      });
    return [...cabinet, ...runs];
  });
}

type SpotOfGroup = Pick<DuctSpot, "x" | "y" | "part" | "alongShare" | "number" | "count">;

function spotsOfGroup(spots: DuctGroup["spots"]): SpotOfGroup[] {
  const hasBranches = spots.boot.length > 1;
  const parts = ["boot", ...(hasBranches ? (["take-off"] as const) : []), "plenum", "trunk"] as const;
  const all = parts.flatMap((part) =>
    shares(spots[part]).map(
      ({ point, alongShare }, index, list): SpotOfGroup => ({
        ...point,
        part,
        alongShare,
        number: index + 1,
        count: list.length,
      }),
    ),
  );
  return all
    .filter((at, index) => all.slice(0, index).every(({ x, y }) => Math.hypot(x - at.x, y - at.y) >= LEAST_APART))
    .sort((a, b) => a.x - b.x || DUCT_PARTS.indexOf(a.part) - DUCT_PARTS.indexOf(b.part));
}

/** Points from left to right, each with how far it is from the leftmost to the rightmost, so that a phone's drawing and a desk's agree. */
function shares(points: readonly Point[]): { point: Point; alongShare: number }[] {
  const sorted = [...points].sort((a, b) => a.x - b.x);
  const [first, last] = [sorted[0]?.x ?? 0, sorted.at(-1)?.x ?? 0];
  return sorted.map((point) => ({
    point,
    alongShare: last > first ? Math.round((100 * (point.x - first)) / (last - first)) / 100 : 0,
  }));
}

/** Where a leak that was put somewhere stands in this drawing; undefined where the ducts have changed since. */
export function pointOnDuct({
  layout,
  systemId,
  side,
  placeKind,
  drawnAt,
}: {
  layout: DuctLayout;
  systemId: string;
  side: Side;
  placeKind: PlaceKind | undefined;
  drawnAt: DrawnAt;
}): Point | undefined {
  if (drawnAt.part === "cabinet") {
    const handler = layout.airHandlers.find((one) => one.systemId === systemId && one.placeKind === placeKind);
    return handler && cabinetSpots(handler.box, side)[0];
  }
  const part: Exclude<DuctPart, "cabinet"> = drawnAt.part;
  const group = layout.groups.find(
    (one) => one.systemId === systemId && one.side === side && one.placeKind === placeKind,
  );
  const distance = (alongShare: number) => Math.abs(alongShare - drawnAt.alongShare);
  return group && shares(group.spots[part]).sort((a, b) => distance(a.alongShare) - distance(b.alongShare))[0]?.point;
}

/** Where leaks of a cabinet sit: the side that belongs to them first. */
export function cabinetSpots({ x, y, width, height }: Box, side: "supply" | "return"): Point[] {
  const right = [
    { x: x + width, y: y + height * 0.3 },
    { x: x + width, y: y + height * 0.75 },
  ];
  const left = [
    { x, y: y + height * 0.75 },
    { x, y: y + height * 0.3 },
  ];
  return side === "supply" ? [...right, ...left] : [...left, ...right];
}
