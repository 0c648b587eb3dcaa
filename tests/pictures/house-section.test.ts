import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  ATTIC_HOUSE,
  ATTIC_HOUSE_SEALED,
  CRAWLSPACE_HOUSE,
  MANUFACTURED_HOME,
  TWO_SYSTEM_HOUSE,
} from "#app/look/sample-houses.ts";
import { PLACE_KINDS } from "#lib/job/place.ts";
import { overlaps, textBox } from "#lib/pictures/boxes.ts";
import { layOutDucts } from "#lib/pictures/house/duct-layout.ts";
import { layOutHouse } from "#lib/pictures/house/house-frame.ts";
import { houseSectionScene } from "#lib/pictures/house/house-section.ts";
import type { HouseSectionInput } from "#lib/pictures/house/house-section-input.ts";
import { placeDiscs } from "#lib/pictures/house/leak-discs.ts";
import { COMPACT_WIDTH, type TextShape, WIDE_WIDTH } from "#lib/pictures/scene.ts";
import { plainShapes } from "./scene-bounds.ts";
import { expectSoundScene } from "./scene-checks.ts";

const side = fc.constantFrom("supply" as const, "return" as const);
const placeId = fc.constantFrom(...PLACE_KINDS);
const SPOTS = ["cabinet", "plenum", "trunk", "take-off", "boot"] as const;

/** Any house a survey could describe: all kinds of places, up to three systems, up to a dozen leaks each. */
const anyHouse: fc.Arbitrary<HouseSectionInput> = fc.record({
  kind: fc.constantFrom("site-built" as const, "manufactured" as const, "multifamily" as const),
  storeysCount: fc.integer({ min: 1, max: 4 }),
  places: fc
    .uniqueArray(placeId, { minLength: 1, maxLength: 6 })
    .map((kinds) => kinds.map((kind) => ({ id: kind, kind, note: "90 °F" }))),
  rooms: fc.constant([["bedrooms", "hall", "living room"], ["bath"]]),
  systems: fc
    .array(
      fc.record({
        airHandlerPlaceId: fc.option(placeId, { nil: undefined }),
        runs: fc.array(
          fc.record({
            side,
            placeId,
            flowCfm: fc.double({ min: 1, max: 2000, noNaN: true }),
            openingsCount: fc.integer({ min: 1, max: 9 }),
          }),
          { maxLength: 6 },
        ),
        leaks: fc.array(
          fc.record({
            side,
            placeId,
            cfm25: fc.double({ min: 0.1, max: 400, noNaN: true }),
            state: fc.constantFrom("open" as const, "sealed" as const),
            spot: fc.option(fc.constantFrom(...SPOTS), { nil: undefined }),
          }),
          { maxLength: 12 },
        ),
        notYetFound: fc.array(
          fc.record({ side, cfm25: fc.oneof(fc.constant(0), fc.double({ min: 0.1, max: 200, noNaN: true })) }),
          {
            maxLength: 2,
          },
        ),
      }),
      { minLength: 1, maxLength: 3 },
    )
    .map((systems) =>
      systems.map((system, index) => ({
        ...system,
        id: `system ${index}`,
        label: `system ${index}`,
        runs: system.runs.map((run, number) => ({ ...run, id: `run ${index} ${number}` })),
        leaks: system.leaks.map((leak, number) => ({
          ...leak,
          id: `leak ${index} ${number}`,
          number: index * 20 + number + 1,
          label: `leak ${number}`,
        })),
      })),
    ),
});

const SAMPLES = { ATTIC_HOUSE, ATTIC_HOUSE_SEALED, CRAWLSPACE_HOUSE, MANUFACTURED_HOME, TWO_SYSTEM_HOUSE };

describe("the cut through the house", () => {
  test.each(Object.entries(SAMPLES))("%s is sound at both widths, in both languages", (_, input) => {
    expectSoundScene((options) => houseSectionScene(input, options));
  });

  test("any house a survey can describe stays on its sheet, with numbers only and the same words every time", () => {
    fc.assert(
      fc.property(anyHouse, (input) => {
        expectSoundScene((options) => houseSectionScene(input, options));
      }),
      { numRuns: 60 },
    );
  });

  test("the area of a disc is proportional to its leakage, across systems, before and after", () => {
    fc.assert(
      fc.property(anyHouse, fc.constantFrom(COMPACT_WIDTH, WIDE_WIDTH), (input, width) => {
        const frame = layOutHouse({ input, width });
        const discs = placeDiscs({ input, frame, layout: layOutDucts({ input, frame }) });
        const ratios = discs.map(({ r, cfm25 }) => (Math.PI * r * r) / cfm25);
        for (const ratio of ratios) expect(ratio / (ratios[0] ?? 1)).toBeCloseTo(1, 9);
      }),
      { numRuns: 60 },
    );
  });

  test("no disc covers another", () => {
    fc.assert(
      fc.property(anyHouse, fc.constantFrom(COMPACT_WIDTH, WIDE_WIDTH), (input, width) => {
        const frame = layOutHouse({ input, width });
        const discs = placeDiscs({ input, frame, layout: layOutDucts({ input, frame }) });
        for (const [index, a] of discs.entries()) {
          for (const b of discs.slice(index + 1))
            expect(Math.hypot(a.cx - b.cx, a.cy - b.cy)).toBeGreaterThan(a.r + b.r);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("no label covers another", () => {
    fc.assert(
      fc.property(anyHouse, fc.constantFrom(COMPACT_WIDTH, WIDE_WIDTH), (input, width) => {
        const labels = plainShapes(houseSectionScene(input, { width })).filter(
          (shape): shape is TextShape => shape.kind === "text",
        );
        for (const [index, a] of labels.entries()) {
          for (const b of labels.slice(index + 1)) expect(overlaps(textBox(a), textBox(b))).toBe(false);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("ribbons of one side are together as wide as its flow, on one scale for the whole house", () => {
    const frame = layOutHouse({ input: TWO_SYSTEM_HOUSE, width: WIDE_WIDTH });
    const { groups } = layOutDucts({ input: TWO_SYSTEM_HOUSE, frame });
    const widthOf = (systemId: string) =>
      groups
        .filter((group) => group.systemId === systemId && group.side === "supply")
        .flatMap(({ lanes }) => lanes)
        .reduce((total, lane) => total + lane.width, 0);
    expect(widthOf("up") / widthOf("down")).toBeCloseTo(760 / 980, 9);
  });

  test("every leak stands in the table with its flow, and as a thing one can point at", () => {
    const scene = houseSectionScene(ATTIC_HOUSE, { width: WIDE_WIDTH });
    expect(scene.table.rows.map((row) => row[3])).toEqual(["121", "38", "22", "6", "44"]);
    const items = scene.shapes.flatMap((shape) => (shape.kind === "item" ? [shape.label] : []));
    expect(items).toContain("Leak 1: supply plenum joint, 121 cfm at 25 Pa, open");
  });

  test("the sentence names the largest leak and its share of what is open", () => {
    // 121 of 121 + 38 + 22 + 6 + 44 = 231 is 52 %.
    expect(houseSectionScene(ATTIC_HOUSE, { width: WIDE_WIDTH }).finding).toBe(
      "The largest leak is number 1, supply plenum joint: 121 cfm at 25 Pa, 52% of what is open.",
    );
    expect(houseSectionScene(ATTIC_HOUSE_SEALED, { width: WIDE_WIDTH }).finding).toBe(
      "3 of 4 leaks are sealed; 24 cfm at 25 Pa is still open.",
    );
  });
});
