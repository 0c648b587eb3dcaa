import { describe, expect, test } from "vitest";
import { layLanes } from "#lib/pictures/house/duct-group.ts";
import { lanePath, offsetPolyline, turnAt } from "#lib/pictures/house/lanes.ts";

describe("lanes of air", () => {
  test("a line moved sideways keeps its distance on every leg", () => {
    const line = [
      { x: 0, y: 0 },
      { x: 0, y: -50 },
      { x: 80, y: -50 },
      { x: 80, y: -20 },
    ];
    // Traveling up, right is +x; traveling right, right is +y; traveling down, right is −x.
    expect(offsetPolyline(line, 4)).toEqual([
      { x: 4, y: 0 },
      { x: 4, y: -46 },
      { x: 76, y: -46 },
      { x: 76, y: -20 },
    ]);
  });

  test("turns are told apart on a sheet whose y grows downward", () => {
    expect(turnAt({ x: 0, y: 0 }, { x: 0, y: -10 }, { x: 10, y: -10 })).toBe(1);
    expect(turnAt({ x: 0, y: 0 }, { x: 0, y: -10 }, { x: -10, y: -10 })).toBe(-1);
  });

  test("lanes of a trunk lie side by side and peel off nearest first, so none crosses another", () => {
    const branches = [
      { width: 6, opening: { x: 60, y: 0 } },
      { width: 4, opening: { x: 120, y: 0 } },
      { width: 8, opening: { x: 180, y: 0 } },
    ];
    const lanes = layLanes({
      axis: [
        { x: 0, y: 40 },
        { x: 0, y: -30 },
      ],
      heading: 1,
      branches,
    });
    const trunkY = lanes.map(({ points }) => points.at(-2)?.y ?? Number.NaN);
    // Openings are below the trunk: the nearest lane is the lowest, each next one above it by half of both widths.
    expect((trunkY[0] ?? 0) - (trunkY[1] ?? 0)).toBeCloseTo(5, 9);
    expect((trunkY[1] ?? 0) - (trunkY[2] ?? 0)).toBeCloseTo(6, 9);
    const riserX = lanes.map(({ points }) => points[0]?.x ?? Number.NaN);
    expect(riserX[0]).toBeGreaterThan(riserX[1] ?? Number.NaN);
    expect(riserX[1]).toBeGreaterThan(riserX[2] ?? Number.NaN);
  });

  test("an elbow never reaches past its leg", () => {
    const d = lanePath({
      points: [
        { x: 0, y: 0 },
        { x: 0, y: 10 },
        { x: 10, y: 10 },
      ],
      radii: [99],
    });
    expect(d).toBe("M0 0L0 0C0 5.52 4.48 10 10 10L10 10");
  });
});
