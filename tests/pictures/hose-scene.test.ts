import { describe, expect, test } from "vitest";
import { textBox } from "#lib/pictures/boxes.ts";
import { type HoseSceneInput, hoseScene } from "#lib/pictures/hose-scene.ts";
import { COMPACT_WIDTH, type TextShape, WIDE_WIDTH } from "#lib/pictures/scene.ts";
import { DEMO_FAN } from "#lib/setup/demo-instruments.ts";
import type { DrawnHose } from "#lib/setup/hose-drawing.ts";
import { FAN_CONNECTIONS, SETUP_TEST_KINDS, type SetupAnswers, STANDPOINTS } from "#lib/setup/setup-answers.ts";
import { setupSheet } from "#lib/setup/setup-sheet.ts";
import { plainShapes } from "./scene-bounds.ts";
import { expectSoundScene } from "./scene-checks.ts";

const answers = (changes: Partial<SetupAnswers> = {}): SetupAnswers => ({
  testKind: "total-leakage",
  stage: "existing",
  hasAirHandler: true,
  side: "supply",
  direction: "pushing",
  fanConnection: "central-return",
  personAt: "house",
  registerCover: "adhesive-film",
  registerCount: 10,
  hasCombustionAppliance: false,
  expectedLeakageCfm: 200,
  fan: DEMO_FAN,
  ...changes,
});

function inputOf(changes: Partial<SetupAnswers>): HoseSceneInput {
  const given = answers(changes);
  const { title, drawing, restrictorPlan } = setupSheet(given);
  const expectedFanPressurePa = restrictorPlan?.chosen?.expectedFanPressurePa;
  return { title, direction: given.direction, drawing, ...(expectedFanPressurePa ? { expectedFanPressurePa } : {}) };
}

const DIRECTIONS = ["pushing", "pulling"] as const;
const EVERY_SETUP = SETUP_TEST_KINDS.flatMap((testKind) =>
  DIRECTIONS.flatMap((direction) =>
    STANDPOINTS.flatMap((personAt) =>
      FAN_CONNECTIONS.map((fanConnection) => ({ testKind, direction, personAt, fanConnection })),
    ),
  ),
);

/** Stretches of two different hoses that run along each other closer than a hose is wide. */
function hosesOnTopOfEachOther(hoses: readonly DrawnHose[]): string[] {
  const stretches = hoses.flatMap(({ id, path }) =>
    path.slice(1).map((end, i) => ({ id, a: path[i]!, b: end, isUpright: end.x === path[i]!.x })),
  );
  const along = (stretch: (typeof stretches)[number]) => {
    const { a, b, isUpright } = stretch;
    const ends = isUpright ? [a.y, b.y] : [a.x, b.x];
    return { at: isUpright ? a.x : a.y, from: Math.min(...ends), to: Math.max(...ends) };
  };
  return stretches.flatMap((one, i) =>
    stretches.slice(i + 1).flatMap((other) => {
      if (one.id === other.id || one.isUpright !== other.isUpright) return [];
      const [x, y] = [along(one), along(other)];
      const shared = Math.min(x.to, y.to) - Math.max(x.from, y.from);
      return Math.abs(x.at - y.at) < 1 && shared > 0.5 ? [`${one.id} and ${other.id}`] : [];
    }),
  );
}

describe("hoses and taps", () => {
  test("every set-up is sound at both widths", () => {
    for (const setup of EVERY_SETUP.filter(({ fanConnection }) => fanConnection === "central-return")) {
      expectSoundScene((options) => hoseScene(inputOf(setup), options));
    }
    for (const fanConnection of FAN_CONNECTIONS) {
      expectSoundScene((options) => hoseScene(inputOf({ fanConnection, direction: "pulling" }), options));
    }
  });

  test("the name of a blank has a line to it, which no other name crosses", () => {
    const kinds = ["side-leakage", "side-leakage-to-outside", "matched-pressure"] as const;
    for (const testKind of kinds) {
      for (const direction of DIRECTIONS) {
        for (const width of [COMPACT_WIDTH, WIDE_WIDTH]) {
          const shapes = plainShapes(hoseScene(inputOf({ testKind, direction }), { width }));
          const name = shapes.find((each): each is TextShape => each.kind === "text" && /[Bb]lank/.test(each.text))!;
          const blank = shapes.find((each) => each.kind === "rect" && each.width === 6 && each.fill === "ink")!;
          if (blank.kind !== "rect") throw new Error("No blank is drawn");
          const x = blank.x + 3;
          const line = shapes.find((each) => each.kind === "path" && each.d.startsWith(`M${x} `) && !each.fill);
          const setup = `${testKind} ${direction} ${width}`;
          expect(line, setup).toBeDefined();
          expect(name.x - x, setup).toBeLessThan(8);
          expect(blank.y - name.y, setup).toBeLessThan(60);
          const crossed = shapes
            .filter((each): each is TextShape => each.kind === "text")
            .filter((each) => {
              const box = textBox(each);
              return box.x < x && box.x + box.width > x && box.y > name.y && box.y < blank.y;
            });
          expect(
            crossed.map(({ text }) => text),
            setup,
          ).toEqual([]);
        }
      }
    }
  });

  test("no hose of any set-up lies on top of another, or behind the gauge", () => {
    for (const setup of EVERY_SETUP) {
      const { hoses, gauge } = inputOf(setup).drawing;
      expect(hosesOnTopOfEachOther(hoses), JSON.stringify(setup)).toEqual([]);
      for (const { path, id } of hoses) {
        // Only the last stretch, to the port, enters the gauge.
        const hidden = path.slice(1, -1).filter((end, i) => {
          const start = path[i]!;
          const isBeside = Math.max(start.x, end.x) <= gauge.left || Math.min(start.x, end.x) >= gauge.right;
          const isAboveOrBelow = Math.max(start.y, end.y) <= gauge.top || Math.min(start.y, end.y) >= gauge.bottom;
          return !isBeside && !isAboveOrBelow;
        });
        expect(hidden, `${id} ${JSON.stringify(setup)}`).toEqual([]);
      }
    }
    const twice = inputOf({}).drawing.hoses[0]!;
    expect(hosesOnTopOfEachOther([twice, { ...twice, id: "planted" }]).length).toBeGreaterThan(0);
  });

  test("each hose has its number at its tap and at its port, and nowhere else in the house", () => {
    for (const width of [COMPACT_WIDTH, WIDE_WIDTH]) {
      const input = inputOf({ testKind: "leakage-to-outside", direction: "pulling" });
      const scene = hoseScene(input, { width });
      const items = scene.shapes.filter((shape) => shape.kind === "item");
      expect(items.map(({ id }) => id)).toEqual(input.drawing.hoses.map(({ id }) => id));
      items.forEach((item, i) => {
        const numbers = item.shapes.filter((shape): shape is TextShape => shape.kind === "text");
        expect(numbers.map(({ text }) => text)).toEqual([String(i + 1), String(i + 1)]);
      });
    }
  });

  test("no two words of a picture cover each other", () => {
    for (const setup of EVERY_SETUP.filter(({ fanConnection }) => fanConnection === "central-return")) {
      for (const width of [COMPACT_WIDTH, WIDE_WIDTH]) {
        const texts = plainShapes(hoseScene(inputOf(setup), { width })).filter((shape) => shape.kind === "text");
        const boxes = texts.map((text) => ({ text: text.text, ...textBox(text) }));
        const clashes = boxes.flatMap((a, i) =>
          boxes
            .slice(i + 1)
            .filter(
              (b) =>
                a.x < b.x + b.width - 1 &&
                b.x < a.x + a.width - 1 &&
                a.y < b.y + b.height - 2 &&
                b.y < a.y + a.height - 2,
            )
            .map((b) => `${a.text} / ${b.text}`),
        );
        expect(clashes, `${JSON.stringify(setup)} ${width}`).toEqual([]);
      }
    }
  });

  test("the sentence and the table say what the gauge should show: pushing plus, pulling minus", () => {
    expect(hoseScene(inputOf({}), { width: WIDE_WIDTH }).finding).toBe(
      "Air is pushed into the ducts; 2 hoses; hold ducts to house +25 Pa.",
    );
    const pulled = hoseScene(inputOf({ direction: "pulling" }), { width: WIDE_WIDTH });
    expect(pulled.finding).toContain("hold ducts to house −25 Pa");
    expect(pulled.table.rows[1]).toEqual([
      "Fan pressure",
      "hose 2: Flow tap of the fan",
      "hose 3: Flexible duct before the fan",
      // 200 cfm on 0.96·19·√P (lib/setup/demo-instruments): P = (200/18.24)² = 120.2.
      "about −120 Pa",
    ]);
  });

  test("standing in the attic, the reference of the ducts is a hose into the rooms", () => {
    const { table } = hoseScene(inputOf({ personAt: "attic" }), { width: WIDE_WIDTH });
    expect(table.rows[0]).toContain("hose 2: Air of the rooms");
    expect(hoseScene(inputOf({}), { width: WIDE_WIDTH }).table.rows[0]).toContain("no hose: port left open");
  });
});

test("the blank between the sides has its name in every set-up for one side, on a phone too", () => {
  const sides = EVERY_SETUP.filter(
    ({ testKind, fanConnection }) => testKind.startsWith("side-leakage") && fanConnection !== "branch-register",
  );
  expect(sides.length).toBeGreaterThan(60);
  const nameless = sides.flatMap((setup) =>
    ([COMPACT_WIDTH, WIDE_WIDTH] as const).flatMap((width) => {
      const texts = plainShapes(hoseScene(inputOf(setup), { width })).filter((shape) => shape.kind === "text");
      return texts.some(({ text }) => /^Blank/.test(text)) ? [] : [`${width} ${Object.values(setup).join(" ")}`];
    }),
  );
  expect(nameless).toEqual([]);
});
