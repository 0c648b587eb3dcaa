import type { Side } from "#lib/job/duct-system.ts";
import type { DuctPart } from "#lib/job/leak-site.ts";
import type { PlaceKind } from "#lib/job/place.ts";
import { type Lane, offsetPolyline, type Point, turnAt } from "./lanes.ts";

/** The ducts of one side of one system in one place. */
export interface DuctGroup {
  systemId: string;
  side: Side;
  placeKind: PlaceKind;
  lanes: readonly Lane[];
  /** Where a leak can be drawn, by what leaks. */
  spots: Readonly<Record<Exclude<DuctPart, "cabinet">, readonly Point[]>>;
}

/** A side of a system in one place, before it is drawn: the widths of its branches. */
export interface GroupPlan {
  side: Side;
  kind: PlaceKind;
  widths: readonly number[];
}

/** A branch: how wide its air is and where it meets the room. */
export interface Branch {
  width: number;
  opening: Point;
}

/** The inside radius of an elbow. */
const ELBOW = 5;

/**
 * Lays the lanes of a trunk side by side and lets them peel off one after the other, nearest first: the trunk narrows
 * by what leaves it, and no two lanes cross. The axis runs from the air handler to where the trunk starts its last leg.
 */
export function layLanes({
  axis,
  heading,
  branches,
}: {
  axis: readonly Point[];
  heading: 1 | -1;
  /** Nearest to the air handler first. */
  branches: readonly Branch[];
}): Lane[] {
  const total = branches.reduce((sum, branch) => sum + branch.width, 0);
  const end = axis[axis.length - 1] as Point;
  const far = branches[branches.length - 1]?.opening.x ?? end.x;
  const trunk = [...axis, { x: heading > 0 ? Math.max(far, end.x + 1) : Math.min(far, end.x - 1), y: end.y }];
  const drop = (branches[0]?.opening.y ?? end.y) >= end.y ? 1 : -1;
  const turn = heading * drop;

  let used = 0;
  return branches.map((branch) => {
    const offset = turn * (total / 2 - used - branch.width / 2);
    used += branch.width;
    const line = offsetPolyline(trunk, offset);
    const trunkY = (line[line.length - 1] as Point).y;
    const points = [...line.slice(0, -1), { x: branch.opening.x, y: trunkY }, branch.opening];
    const radii = points.slice(1, -1).map((corner, index) => {
      const isDrop = index === points.length - 3;
      if (isDrop) return ELBOW + branch.width / 2;
      const way = turnAt(trunk[index] as Point, trunk[index + 1] as Point, (trunk[index + 2] ?? corner) as Point);
      return Math.max(1, ELBOW + total / 2 - way * offset);
    });
    return { points, width: branch.width, radii };
  });
}

/** Where leaks can sit on lanes: at the first bend, along the trunk, where branches leave, and at their ends. */
export function spotsOf(lanes: readonly Lane[]): DuctGroup["spots"] {
  const takeOffs: Point[] = [];
  const boots: Point[] = [];
  const trunks: Point[] = [];
  const plenums: Point[] = [];
  lanes.forEach((lane, index) => {
    const { points } = lane;
    const [corner, opening] = [points[points.length - 2], points[points.length - 1]] as [Point, Point];
    const before = points[points.length - 3] ?? corner;
    const previous = lanes[index - 1]?.points.at(-2);
    takeOffs.push(corner);
    boots.push(opening);
    const from =
      previous && Math.sign(previous.x - before.x) === Math.sign(corner.x - before.x) ? previous.x : before.x;
    trunks.push({ x: (from + corner.x) / 2, y: corner.y });
    if (index === 0) plenums.push(before);
  });
  return { plenum: plenums, trunk: trunks, "take-off": takeOffs, boot: boots };
}
