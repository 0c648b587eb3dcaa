import { coordinate } from "../scene.ts";

export interface Point {
  x: number;
  y: number;
}

/** One ribbon of air: from the air handler to where it meets a room, as corner points. */
export interface Lane {
  points: readonly Point[];
  /** Width of the ribbon: proportional to the flow in it. */
  width: number;
  /** Radius of each elbow, one for each inner corner. */
  radii: readonly number[];
}

/**
 * Moves a right-angled line sideways: positive to the right of the direction of travel. Lanes that keep one offset
 * around every corner lie side by side like lanes of a road and never cross.
 */
export function offsetPolyline(points: readonly Point[], offset: number): Point[] {
  return points.map((point, index) => {
    const before = index > 0 ? normal(points[index - 1] as Point, point) : undefined;
    const after = index < points.length - 1 ? normal(point, points[index + 1] as Point) : undefined;
    if (before && after && before.x === after.x && before.y === after.y) return shift(point, before, offset);
    const moved = before ? shift(point, before, offset) : point;
    return after ? shift(moved, after, offset) : moved;
  });
}

/** Unit vector to the right of the way from a to b, on a sheet whose y grows downward. */
function normal(a: Point, b: Point): Point {
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  return { x: -Math.round((b.y - a.y) / length) + 0, y: Math.round((b.x - a.x) / length) + 0 };
}

function shift(point: Point, direction: Point, by: number): Point {
  return { x: point.x + direction.x * by, y: point.y + direction.y * by };
}

/** Which way a corner turns: +1 to the right, −1 to the left, 0 straight on. */
export function turnAt(a: Point, corner: Point, b: Point): number {
  return Math.sign((corner.x - a.x) * (b.y - corner.y) - (corner.y - a.y) * (b.x - corner.x));
}

/** Share of the radius that makes a cubic curve follow a quarter circle (to 0.03 %). */
const QUARTER_CIRCLE = 0.5523;

/** The lane as a path with round elbows, its radii cut back where a leg is short. */
export function lanePath({ points, radii }: Pick<Lane, "points" | "radii">): string {
  const first = points[0] as Point;
  const parts = [`M${pair(first)}`];
  for (let index = 1; index < points.length - 1; index += 1) {
    const [a, corner, b] = [points[index - 1], points[index], points[index + 1]] as [Point, Point, Point];
    const legs = [Math.hypot(corner.x - a.x, corner.y - a.y), Math.hypot(b.x - corner.x, b.y - corner.y)] as const;
    const isFirst = index === 1;
    const isLast = index === points.length - 2;
    const radius = Math.min(radii[index - 1] ?? 0, legs[0] / (isFirst ? 1 : 2), legs[1] / (isLast ? 1 : 2));
    const start = toward(corner, a, radius);
    const end = toward(corner, b, radius);
    const bend = radius * QUARTER_CIRCLE;
    parts.push(`L${pair(start)}C${pair(toward(start, corner, bend))} ${pair(toward(end, corner, bend))} ${pair(end)}`);
  }
  parts.push(`L${pair(points[points.length - 1] as Point)}`);
  return parts.join("");
}

function toward(from: Point, to: Point, distance: number): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (!(length > 0)) return from;
  return { x: from.x + ((to.x - from.x) * distance) / length, y: from.y + ((to.y - from.y) * distance) / length };
}

function pair({ x, y }: Point): string {
  return `${coordinate(x)} ${coordinate(y)}`;
}
