import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { patternMarks } from "#lib/pictures/pattern-marks.ts";
import type { CircleShape, RectShape } from "#lib/pictures/scene.ts";
import { pathPoints } from "./scene-bounds.ts";

const coordinate = fc.double({ min: 0, max: 700, noNaN: true });
const size = fc.double({ min: 8, max: 200, noNaN: true });

describe("marks of meaning", () => {
  test("hatch lines end on the edge of a circle and lean at 45°", () => {
    fc.assert(
      fc.property(coordinate, coordinate, size, (cx, cy, r) => {
        const circle: CircleShape = { kind: "circle", cx, cy, r, pattern: "hatched" };
        const points = pathPoints(patternMarks(circle));
        expect(points.length).toBeGreaterThan(0);
        // Coordinates are written with two decimals.
        for (const { x, y } of points) expect(Math.abs(Math.hypot(x - cx, y - cy) - r)).toBeLessThan(0.02);
        for (let index = 0; index < points.length; index += 2) {
          const [a, b] = [points[index], points[index + 1]];
          expect(Math.abs((b?.x ?? 0) - (a?.x ?? 0) - ((b?.y ?? 0) - (a?.y ?? 0)))).toBeLessThan(0.03);
        }
      }),
    );
  });

  test("hatch lines and dots stay within a rectangle", () => {
    fc.assert(
      fc.property(
        coordinate,
        coordinate,
        size,
        size,
        fc.constantFrom("hatched" as const, "dotted" as const),
        (x, y, width, height, pattern) => {
          const rect: RectShape = { kind: "rect", x, y, width, height, pattern };
          for (const point of pathPoints(patternMarks(rect))) {
            expect(point.x).toBeGreaterThanOrEqual(x - 0.02);
            expect(point.x).toBeLessThanOrEqual(x + width + 0.02);
            expect(point.y).toBeGreaterThanOrEqual(y - 0.02);
            expect(point.y).toBeLessThanOrEqual(y + height + 0.02);
          }
        },
      ),
    );
  });

  test("a shape without a pattern has no marks", () => {
    expect(patternMarks({ kind: "circle", cx: 0, cy: 0, r: 9 })).toBe("");
  });
});
