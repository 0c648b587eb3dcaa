import { describe, expect, test } from "vitest";
import { spotsAtTap } from "#app/jobs/trip/steps/spot-marks.tsx";
import { ATTIC_HOUSE, CRAWLSPACE_HOUSE, MANUFACTURED_HOME, TWO_SYSTEM_HOUSE } from "#app/look/sample-houses.ts";
import type { DuctSpot } from "#lib/pictures/house/duct-spots.ts";
import { houseSectionScene } from "#lib/pictures/house/house-section.ts";
import type { HouseSectionInput } from "#lib/pictures/house/house-section-input.ts";
import { COMPACT_WIDTH, type ItemShape, WIDE_WIDTH } from "#lib/pictures/scene.ts";

const HOUSES = { ATTIC_HOUSE, CRAWLSPACE_HOUSE, MANUFACTURED_HOME, TWO_SYSTEM_HOUSE };

/** The house with one leak, put at a spot. */
function withLeakAt(input: HouseSectionInput, { systemId, side, placeId, part, alongShare }: DuctSpot) {
  const leak = {
    id: "put",
    number: 1,
    side,
    placeId,
    cfm25: 20,
    label: "put",
    state: "open" as const,
    drawnAt: { part, alongShare },
  };
  const systems = input.systems.map((system) => ({
    ...system,
    leaks: system.id === systemId ? [leak] : [],
    notYetFound: [],
  }));
  return { ...input, systems };
}

/** Where the leak's disc stands. */
function discOf(input: HouseSectionInput, width: number) {
  const scene = houseSectionScene(input, { width });
  const item = scene.shapes.find((shape): shape is ItemShape => shape.kind === "item" && shape.id === "put");
  const circle = item?.shapes.find((shape) => shape.kind === "circle");
  if (!circle) throw new Error("The leak is not drawn");
  return circle;
}

describe.each(Object.entries(HOUSES))("the spots of %s", (_, input) => {
  const bare = { ...input, systems: input.systems.map((system) => ({ ...system, leaks: [], notYetFound: [] })) };

  test.each([COMPACT_WIDTH, WIDE_WIDTH])("at %i units each has a name of its own and lies on the sheet", (width) => {
    const { spots, height } = houseSectionScene(bare, { width });
    expect(spots.length).toBeGreaterThan(6);
    expect(new Set(spots.map(({ id }) => id)).size).toBe(spots.length);
    for (const { x, y, alongShare, number, count } of spots) {
      expect(x > 0 && x < width && y > 0 && y < height).toBe(true);
      expect(alongShare >= 0 && alongShare <= 1).toBe(true);
      expect(number >= 1 && number <= count).toBe(true);
    }
  });

  test("a leak stands where it was put, as near as the walls let its disc", () => {
    for (const width of [COMPACT_WIDTH, WIDE_WIDTH]) {
      for (const spot of houseSectionScene(bare, { width }).spots) {
        const { cx, cy, r } = discOf(withLeakAt(bare, spot), width);
        expect(Math.hypot(cx - spot.x, cy - spot.y), spot.id).toBeLessThanOrEqual(r + 6);
      }
    }
  });

  test("put on a desk it stands on the same run of a phone's drawing, left where it was left", () => {
    const [wide, compact] = [WIDE_WIDTH, COMPACT_WIDTH].map((width) => houseSectionScene(bare, { width }));
    const boots = wide!.spots.filter(({ part, count }) => part === "boot" && count > 2);
    const ends = boots.filter(({ number, count }) => number === 1 || number === count);
    for (const spot of ends) {
      const { cx, cy, r } = discOf(withLeakAt(bare, spot), COMPACT_WIDTH);
      const alike = compact!.spots.filter(
        (each) =>
          each.part === "boot" &&
          each.systemId === spot.systemId &&
          each.side === spot.side &&
          each.placeId === spot.placeId,
      );
      const expected = spot.number === 1 ? alike[0]! : alike.at(-1)!;
      expect(Math.hypot(cx - expected.x, cy - expected.y), spot.id).toBeLessThanOrEqual(r + 6);
    }
  });
});

describe("a tap on the drawing", () => {
  const scene = houseSectionScene(ATTIC_HOUSE, { width: COMPACT_WIDTH });
  const box = { left: 16, top: 200, width: 330 };
  const scale = box.width / scene.width;
  const tap = (x: number, y: number) => spotsAtTap({ scene, box, x: x * scale + box.left, y: y * scale + box.top });

  test("means the spot it hits, and offers what else lies under a thumb of 44 px", () => {
    for (const spot of scene.spots) {
      const [nearest, ...others] = tap(spot.x, spot.y);
      expect(nearest).toBe(spot);
      for (const { x, y } of others) expect(Math.hypot(x - spot.x, y - spot.y) * scale).toBeLessThanOrEqual(22);
    }
  });

  test("means nothing far from every duct", () => {
    expect(tap(4, 4)).toEqual([]);
  });
});
