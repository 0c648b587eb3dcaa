import { isValidElement, type ReactNode } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { SceneSvg } from "#app/design/scene-svg.tsx";
import * as figures from "#app/look/sample-figures.ts";
import { ATTIC_HOUSE, TWO_SYSTEM_HOUSE } from "#app/look/sample-houses.ts";
import { SceneHtml } from "#lib/documents/html/scene-html.tsx";
import { ScenePdf } from "#lib/documents/scene-pdf.tsx";
import { energyMonthsScene } from "#lib/pictures/energy-months.ts";
import { houseSectionScene } from "#lib/pictures/house/house-section.ts";
import { hundredDollarsScene } from "#lib/pictures/hundred-dollars.ts";
import { leaksRankedScene } from "#lib/pictures/leaks-ranked.ts";
import { priceFrontierScene } from "#lib/pictures/price-frontier.ts";
import { savingsDriversScene } from "#lib/pictures/savings-drivers.ts";
import { savingsRangeScene } from "#lib/pictures/savings-range.ts";
import { testPointsScene } from "#lib/pictures/test-points.ts";

const WIDE = { width: 680 };
const SCENES = [
  houseSectionScene(ATTIC_HOUSE, WIDE),
  houseSectionScene(TWO_SYSTEM_HOUSE, WIDE),
  hundredDollarsScene(figures.HUNDRED_DOLLARS, WIDE),
  testPointsScene(figures.TEST_POINTS, WIDE),
  savingsRangeScene(figures.SAVINGS_RANGE, WIDE),
  savingsDriversScene(figures.SAVINGS_DRIVERS, WIDE),
  energyMonthsScene(figures.ENERGY_MONTHS, WIDE),
  leaksRankedScene(figures.LEAKS_RANKED, WIDE),
  priceFrontierScene(figures.PRICE_FRONTIER, WIDE),
];
const pageOf = (scene: (typeof SCENES)[number]) =>
  renderToStaticMarkup(<SceneHtml scene={scene} className="picture" />);

/** What is drawn, in order: every path, and every word. */
function drawn(svg: string): string[] {
  return [...svg.matchAll(/ d="([^"]+)"|<text[^>]*>([^<]+)<\/text>/g)].map(([, d, text]) => d ?? text ?? "");
}

/** The same of paper's elements: its own parts are opened, the library's are looked at. */
function drawnOnPaper(node: ReactNode): string[] {
  if (Array.isArray(node)) return node.flatMap(drawnOnPaper);
  if (!isValidElement<{ d?: string; children?: ReactNode }>(node)) return typeof node === "string" ? [node] : [];
  const { type, props } = node;
  if (typeof type === "function") return drawnOnPaper((type as (given: typeof props) => ReactNode)(props));
  return [...(props.d === undefined ? [] : [props.d]), ...drawnOnPaper(props.children)];
}

describe("a scene on paper", () => {
  test.each(SCENES)("$title: draws the same paths and words in the same order as the screen", (scene) => {
    const paper = drawnOnPaper(<ScenePdf scene={scene} widthPoints={400} fonts={{ sans: "a", mono: "b" }} />);
    expect(paper.length).toBeGreaterThan(5);
    const screen = drawn(renderToStaticMarkup(<SceneSvg scene={scene} />));
    expect(paper.map((each) => renderToStaticMarkup(<i>{each}</i>).slice(3, -4))).toEqual(screen);
  });
});

describe("a scene on a page without script", () => {
  test.each(SCENES)("$title: draws the same paths and words in the same order as the screen", (scene) => {
    const page = drawn(pageOf(scene));
    expect(page.length).toBeGreaterThan(5);
    expect(page).toEqual(drawn(renderToStaticMarkup(<SceneSvg scene={scene} />)));
  });
  test.each(SCENES)(
    "$title: every label of three letters or more keeps to the room that was measured, whatever font stands in",
    (scene) => {
      const labels = pageOf(scene).match(/<text[^>]*>[^<]{9,}</g) ?? [];
      expect(labels.length).toBeGreaterThan(0);
      for (const label of labels) expect(label).toMatch(/textLength="[\d.]+" lengthAdjust="spacingAndGlyphs"/);
    },
  );
  test("a label cannot break out of the drawing", () => {
    const house = { ...ATTIC_HOUSE, rooms: [['</text><script>alert("x")</script>', "hall", "b & b"]] };
    const svg = pageOf(houseSectionScene(house, WIDE));
    expect(svg).not.toContain("<script");
    expect(svg).toContain("b &amp; b");
  });
});
