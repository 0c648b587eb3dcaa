import fc from "fast-check";
import { describe, expect, test } from "vitest";
import * as figures from "#app/look/sample-figures.ts";
import { overlaps, textBox } from "#lib/pictures/boxes.ts";
import { climateScene } from "#lib/pictures/climate-scene.ts";
import { energyMonthsScene } from "#lib/pictures/energy-months.ts";
import { hundredDollarsScene } from "#lib/pictures/hundred-dollars.ts";
import { leaksRankedScene } from "#lib/pictures/leaks-ranked.ts";
import { priceFrontierScene } from "#lib/pictures/price-frontier.ts";
import { savingsDriversScene } from "#lib/pictures/savings-drivers.ts";
import { savingsRangeScene } from "#lib/pictures/savings-range.ts";
import { COMPACT_WIDTH, type RectShape } from "#lib/pictures/scene.ts";
import { testPointsScene } from "#lib/pictures/test-points.ts";
import { pathPoints, plainShapes } from "./scene-bounds.ts";
import { expectSoundScene } from "./scene-checks.ts";

const WIDE = { width: 680 };
const amount = (max: number, min = 0) => fc.double({ min, max, noNaN: true });
const months = (max: number) => fc.array(amount(max), { minLength: 12, maxLength: 12 });
const rectsOf = (scene: Parameters<typeof plainShapes>[0], fill: RectShape["fill"]) =>
  plainShapes(scene).filter((shape): shape is RectShape => shape.kind === "rect" && shape.fill === fill);

describe("where each $100 goes", () => {
  const split = fc
    .tuple(amount(1, 0.001), amount(1), amount(1), amount(1))
    .map((parts) => parts.map((part) => (100 * part) / parts.reduce((a, b) => a + b, 0)))
    .map(([roomsUsd = 0, regainedUsd = 0, lostUsd = 0, blowerUsd = 0]) => ({
      roomsUsd,
      regainedUsd,
      lostUsd,
      blowerUsd,
    }));

  test("any split is sound, and its parts are as wide as their dollars", () => {
    fc.assert(
      fc.property(split, split, (before, after) => {
        expectSoundScene((options) => hundredDollarsScene({ use: "cooling", before, after }, options));
        const bars = plainShapes(hundredDollarsScene({ use: "cooling", before }, WIDE)).filter(
          (shape): shape is RectShape => shape.kind === "rect" && shape.height === 44,
        );
        // The bar of $100 is 572 wide; widths are written with two decimals.
        expect(Math.abs((bars[0]?.width ?? 0) - 5.72 * before.roomsUsd)).toBeLessThan(0.011);
        expect(bars.reduce((total, bar) => total + bar.width, 0)).toBeCloseTo(572, 0);
      }),
      { numRuns: 60 },
    );
  });
  test("parts that do not add up to $100 are refused", () => {
    expect(() =>
      hundredDollarsScene(
        { use: "heating", before: { roomsUsd: 60, regainedUsd: 0, lostUsd: 25, blowerUsd: 3 } },
        WIDE,
      ),
    ).toThrow(/add up to 88/);
    expect(() =>
      hundredDollarsScene(
        { use: "heating", before: { roomsUsd: Number.NaN, regainedUsd: 0, lostUsd: 25, blowerUsd: 3 } },
        WIDE,
      ),
    ).toThrow();
  });
});

describe("test points", () => {
  test("any readings are sound, with or without a line", () => {
    const point = fc.record({ pressurePa: amount(60, 3), flowCfm: amount(2000, 5), isDoubtful: fc.boolean() });
    fc.assert(
      fc.property(fc.array(point, { maxLength: 8 }), (points) => {
        const numbered = points.map((one, index) => ({ ...one, id: `p${index}`, number: index + 1 }));
        expectSoundScene((options) => testPointsScene({ points: numbered }, options));
      }),
      { numRuns: 60 },
    );
    expectSoundScene((options) => testPointsScene(figures.TEST_POINTS, options));
  });
  test("the sentence reads the flow off at the reference pressure, with its interval", () => {
    expect(testPointsScene(figures.TEST_POINTS, WIDE).finding).toBe(
      "At 25 Pa the ducts leak 274 cfm, and the line allows 260 to 288 cfm.",
    );
  });
  test("a power law is straight on log-log paper: the middle of the line is the geometric mean", () => {
    const pressures = [12.5, 25, 50];
    const input = {
      points: pressures.map((pressurePa, index) => ({
        id: `${index}`,
        number: index + 1,
        pressurePa,
        flowCfm: 40 * pressurePa ** 0.6,
      })),
    };
    const circles = plainShapes(testPointsScene(input, WIDE)).flatMap((shape) =>
      shape.kind === "circle" ? [shape] : [],
    );
    expect(circles[1]?.cy).toBeCloseTo(((circles[0]?.cy ?? 0) + (circles[2]?.cy ?? 0)) / 2, 1);
    expect(circles[1]?.cx).toBeCloseTo(((circles[0]?.cx ?? 0) + (circles[2]?.cx ?? 0)) / 2, 1);
  });
});

describe("savings", () => {
  test("any three figures in order are sound; out of order they are refused", () => {
    fc.assert(
      fc.property(amount(500, -500), amount(800), amount(800), (p10, up, further) => {
        expectSoundScene((options) =>
          savingsRangeScene(
            { p10UsdPerYear: p10, p50UsdPerYear: p10 + up, p90UsdPerYear: p10 + up + further },
            options,
          ),
        );
      }),
      { numRuns: 60 },
    );
    expect(() => savingsRangeScene({ p10UsdPerYear: 3, p50UsdPerYear: 2, p90UsdPerYear: 1 }, WIDE)).toThrow(/order/);
  });
  test("a loss is marked, a gain is not", () => {
    expect(rectsOf(savingsRangeScene(figures.SAVINGS_MAYBE_NOTHING, WIDE), "lost")).toHaveLength(1);
    expect(rectsOf(savingsRangeScene(figures.SAVINGS_RANGE, WIDE), "lost")).toHaveLength(0);
  });
  test("drivers stand strongest first", () => {
    const driver = fc.record({
      label: fc.constantFrom("fan flow", "attic temperature"),
      lowUsdPerYear: amount(300, -300),
      highUsdPerYear: amount(900),
    });
    fc.assert(
      fc.property(fc.array(driver, { maxLength: 12 }), (drivers) => {
        const input = { savedUsdPerYear: 300, drivers: drivers.map((one, index) => ({ ...one, id: `d${index}` })) };
        expectSoundScene((options) => savingsDriversScene(input, options));
      }),
      { numRuns: 40 },
    );
    expect(savingsDriversScene(figures.SAVINGS_DRIVERS, WIDE).table.rows.map((row) => row[0])[0]).toBe(
      "fan flow, nameplate only",
    );
  });
});

describe("months", () => {
  test("any year is sound, also where the work costs energy", () => {
    fc.assert(
      fc.property(months(900), months(900), (before, after) => {
        const fuels = [{ id: "g", label: "natural gas", unit: "therms", before, after }];
        expectSoundScene((options) => energyMonthsScene({ fuels }, options));
      }),
      { numRuns: 40 },
    );
  });
  test("what is saved is as high as the difference, on the scale of what is left", () => {
    const scene = energyMonthsScene(figures.ENERGY_MONTHS, WIDE);
    // January gas: 97 of 128 therms are left, 31 are saved.
    const [left, saved] = [rectsOf(scene, "kept")[0], rectsOf(scene, "lost")[0]];
    expect((saved?.height ?? 0) / (left?.height ?? 1)).toBeCloseTo(31 / 97, 2);
  });
  test("eleven months are refused", () => {
    const fuels = [{ id: "g", label: "gas", unit: "therms", before: Array(11).fill(1), after: Array(12).fill(1) }];
    expect(() => energyMonthsScene({ fuels }, WIDE)).toThrow(/twelve/);
  });
});

describe("leaks ranked", () => {
  const leak = fc.record({
    cfm25: amount(400),
    lostUsdPerYear: amount(900),
    effort: fc.constantFrom("easy" as const, "moderate" as const, "hard" as const),
    isSealed: fc.boolean(),
  });
  test("any list is sound and stands largest first", () => {
    fc.assert(
      fc.property(fc.array(leak, { minLength: 1, maxLength: 30 }), (leaks) => {
        const input = {
          leaks: leaks.map((one, index) => ({
            ...one,
            id: `l${index}`,
            number: index + 1,
            label: "boot to drywall, far bedroom",
            placeLabel: "attic",
          })),
        };
        expectSoundScene((options) => leaksRankedScene(input, options));
      }),
      { numRuns: 40 },
    );
  });
  test("a bar is as long as its leakage", () => {
    const bars = rectsOf(leaksRankedScene(figures.LEAKS_RANKED, WIDE), "lost");
    expect((bars[1]?.width ?? 0) / (bars[0]?.width ?? 1)).toBeCloseTo(38 / 121, 3);
  });
  test("the sentence counts the fewest leaks that make up 70 %", () => {
    // 121 + 38 of 187 is 85 %; 121 alone is 65 %.
    expect(leaksRankedScene(figures.LEAKS_RANKED, WIDE).finding).toBe(
      "2 leaks out of 4 make up 85% of what was found.",
    );
  });
});

describe("price and leakage", () => {
  test("any frontier is sound", () => {
    const point = fc.record({
      priceUsdCents: fc.integer({ min: 0, max: 900000 }),
      predictedCfm25: amount(500),
      isChosen: fc.boolean(),
    });
    fc.assert(
      fc.property(
        fc.array(point, { maxLength: 9 }),
        fc.option(amount(300, 1), { nil: undefined }),
        (points, targetCfm25) => {
          const input = {
            todayCfm25: 510,
            targetCfm25,
            points: points.map((one, index) => ({
              ...one,
              id: `f${index}`,
              label: `Set ${index}`,
              p10Cfm25: one.predictedCfm25 * 0.8,
              p90Cfm25: one.predictedCfm25 * 1.2,
            })),
          };
          expectSoundScene((options) => priceFrontierScene(input, options));
        },
      ),
      { numRuns: 60 },
    );
  });
  test("no name lies on a bar, and each stands over or beside its own point", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 900000 }), fc.integer({ min: 0, max: 500 })), { maxLength: 9 }),
        (pairs) => {
          const points = pairs.map(([priceUsdCents, predictedCfm25], index) => ({
            id: `f${index}`,
            label: String(index + 1),
            priceUsdCents,
            predictedCfm25,
            p10Cfm25: predictedCfm25 * 0.8,
            p90Cfm25: predictedCfm25 * 1.2,
          }));
          const scene = priceFrontierScene({ todayCfm25: 510, points }, { width: COMPACT_WIDTH });
          const shapes = plainShapes(scene);
          const bars = shapes.flatMap((shape) => {
            if (shape.kind !== "path" || shape.opacity !== 0.4) return [];
            const [from, to] = pathPoints(shape.d);
            return [{ x: from!.x - 1, y: Math.min(from!.y, to!.y), width: 2, height: Math.abs(to!.y - from!.y) }];
          });
          expect(bars).toHaveLength(points.length);
          const discs = shapes.flatMap((shape) => (shape.kind === "circle" && shape.r === 6 ? [shape] : []));
          const names = shapes.flatMap((shape) =>
            shape.kind === "text" && /^\d(, \d)*$/.test(shape.text) ? [shape] : [],
          );
          for (const name of names.filter(({ size }) => size === 13)) {
            const box = textBox(name);
            expect(bars.filter((bar) => overlaps(box, bar))).toEqual([]);
            const away = discs.map(({ cx, cy }) =>
              Math.hypot(
                Math.max(box.x - cx, 0, cx - box.x - box.width),
                Math.max(box.y - cy, 0, cy - box.y - box.height),
              ),
            );
            expect(Math.min(...away)).toBeLessThan(62);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
  test("points on one spot share their name, and the chosen one keeps its own", () => {
    const at = (id: string, priceUsdCents: number, isChosen = false) => ({
      id,
      label: id,
      priceUsdCents,
      predictedCfm25: 100,
      isChosen,
    });
    const scene = priceFrontierScene(
      { todayCfm25: 300, points: [at("3", 100000), at("4", 100500), at("5", 101000, true), at("6", 200000)] },
      WIDE,
    );
    const texts = plainShapes(scene).flatMap((shape) => (shape.kind === "text" ? [shape.text] : []));
    expect(texts).toEqual(expect.arrayContaining(["3, 4", "5", "6"]));
    expect(texts).not.toContain("3");
  });
  test("the sentence names the cheapest set that reaches the target, or says that none does", () => {
    expect(priceFrontierScene(figures.PRICE_FRONTIER, WIDE).finding).toBe(
      "The cheapest that should get to the target of 66 cfm is “everything”: $1,180, leaving about 52 cfm.",
    );
    expect(priceFrontierScene({ ...figures.PRICE_FRONTIER, targetCfm25: 20 }, WIDE).finding).toBe(
      "No set of repairs should get to the target of 20 cfm; the tightest leaves about 41 cfm.",
    );
  });
});

describe("climate", () => {
  test("is sound, and counts the hours on each side of the balance temperatures", () => {
    expectSoundScene((options) => climateScene(figures.CLIMATE, options));
    // 42 + 190 + 640 + 1240 + 1310 + 1280 below 60 °F; 1560 + 760 + 230 + 28 above 70 °F.
    expect(climateScene(figures.CLIMATE, WIDE).finding).toMatch(
      /4,702 hours a year ask for heating, 2,578 for cooling/,
    );
  });
});
