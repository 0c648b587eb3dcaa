import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { SceneSvg } from "#app/design/scene-svg.tsx";
import { HUNDRED_DOLLARS } from "#app/look/sample-figures.ts";
import { ATTIC_HOUSE, TWO_SYSTEM_HOUSE } from "#app/look/sample-houses.ts";
import { SceneHtml } from "#lib/documents/html/scene-html.tsx";
import { houseSectionScene } from "#lib/pictures/house/house-section.ts";
import { hundredDollarsScene } from "#lib/pictures/hundred-dollars.ts";

const WIDE = { width: 680 };
const SCENES = [
  houseSectionScene(ATTIC_HOUSE, WIDE),
  houseSectionScene(TWO_SYSTEM_HOUSE, WIDE),
  hundredDollarsScene(HUNDRED_DOLLARS, WIDE),
];
const pageOf = (scene: (typeof SCENES)[number]) =>
  renderToStaticMarkup(<SceneHtml scene={scene} className="picture" />);

/** What is drawn, in order: every path, and every word. */
function drawn(svg: string): string[] {
  return [...svg.matchAll(/ d="([^"]+)"|<text[^>]*>([^<]+)<\/text>/g)].map(([, d, text]) => d ?? text ?? "");
}

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
