import type { PlaceKind } from "#lib/job/place.ts";
import type { Box } from "../boxes.ts";
import { isCompact } from "../scene.ts";
import { eavesOf, type HouseFrame, INSULATION_DEPTH, type Region } from "./house-frame.ts";

/** The machine that moves the air, as it stands or lies in its place. */
export interface AirHandler {
  box: Box;
  placeKind: PlaceKind;
  posture: "upright" | "lying" | "beside-the-house";
}

/** Stretch of the house, left to right, that one system is drawn in. */
export interface Zone {
  left: number;
  right: number;
}

export function regionOf(frame: HouseFrame, kind: PlaceKind): Region {
  return frame.regions.get(kind) ?? (frame.regions.get("conditioned") as Region);
}

const LYING: readonly PlaceKind[] = ["attic", "vented-crawlspace", "unvented-crawlspace"];

/** `across` is where in its zone the air handler stands: 0 at the left wall, 1 at the right. */
export function placeAirHandler({
  frame,
  kind,
  zone,
  across,
}: {
  frame: HouseFrame;
  kind: PlaceKind;
  zone: Zone;
  across: number;
}): AirHandler {
  const compact = isCompact(frame);
  const region = regionOf(frame, kind);
  const placeKind = frame.regions.has(kind) ? kind : "conditioned";
  // On its left there is always room for the return duct.
  const room = compact ? 52 : 78;
  const wanted = zone.left + (zone.right - zone.left) * across;
  const x = Math.min(frame.right - room, Math.max(frame.left + room, wanted));
  if (LYING.includes(placeKind)) {
    const size = compact ? { width: 40, height: 24 } : { width: 58, height: 32 };
    const isAttic = placeKind === "attic";
    const y = isAttic
      ? frame.eaveY - INSULATION_DEPTH - 3 - size.height
      : region.box.y + region.box.height - size.height - (compact ? 6 : 7);
    const boxX = isAttic ? underTheRoof({ frame, x: x - size.width / 2, size }) : x - size.width / 2;
    return { box: { x: boxX, y, ...size }, placeKind, posture: "lying" };
  }
  const size = compact ? { width: 28, height: 42 } : { width: 40, height: 56 };
  if (placeKind === "outside") {
    const y = Math.min(frame.gradeY, frame.floorY) - size.width - 3;
    return {
      box: { x: frame.left - size.height - (compact ? 8 : 18), y, width: size.height, height: size.width },
      placeKind,
      posture: "beside-the-house",
    };
  }
  const floorY = region.box.y + region.box.height;
  if (placeKind === "garage") {
    const box = { x: region.box.x + region.box.width * 0.5 - size.width / 2, y: floorY - size.height - 8, ...size };
    return { box, placeKind, posture: "beside-the-house" };
  }
  // In a room it stands clear of the floor so that ducts can leave at both ends.
  const clearance = placeKind === "basement" ? 4 : compact ? 22 : 28;
  return {
    box: { x: x - size.width / 2, y: floorY - size.height - clearance, ...size },
    placeKind,
    posture: "upright",
  };
}

/** Moves a box on the attic floor inward until the roof clears its outer corner. */
function underTheRoof({ frame, x, size }: { frame: HouseFrame; x: number; size: { width: number; height: number } }) {
  const eaves = eavesOf(frame);
  const halfSpan = (frame.right - frame.left) / 2 + eaves;
  const headroom = size.height + INSULATION_DEPTH + 14;
  const inset = (headroom * halfSpan) / (frame.eaveY - frame.ridgeY) - eaves;
  const farthestRight = frame.right - inset - size.width;
  const nearestLeft = frame.left + inset;
  return nearestLeft < farthestRight
    ? Math.min(farthestRight, Math.max(nearestLeft, x))
    : (frame.left + frame.right - size.width) / 2;
}
