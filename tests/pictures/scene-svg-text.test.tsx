import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { SceneSvg } from "#app/design/scene-svg.tsx";
import { HUNDRED_DOLLARS } from "#app/look/sample-figures.ts";
import { ATTIC_HOUSE, TWO_SYSTEM_HOUSE } from "#app/look/sample-houses.ts";
import { houseSectionScene } from "#lib/pictures/house/house-section.ts";
import { hundredDollarsScene } from "#lib/pictures/hundred-dollars.ts";
import { sceneSvgText } from "#lib/pictures/scene-svg-text.ts";

const FONTS = { sans: "Sans", mono: "Mono" };
const WIDE = { width: 680 };
const SCENES = [
  houseSectionScene(ATTIC_HOUSE, WIDE),
  houseSectionScene(TWO_SYSTEM_HOUSE, WIDE),
  hundredDollarsScene(HUNDRED_DOLLARS, WIDE),
];

/** What is drawn, in order: every path, and every word. */
function drawn(svg: string): string[] {
  return [...svg.matchAll(/ d="([^"]+)"|<text[^>]*>([^<]+)<\/text>/g)].map(([, d, text]) => d ?? text ?? "");
}

describe("a scene as text", () => {
  test.each(SCENES)("$title: draws the same paths and words in the same order as the screen", (scene) => {
    const text = drawn(sceneSvgText(scene, { id: "p", fonts: FONTS }));
    expect(text.length).toBeGreaterThan(5);
    expect(text).toEqual(drawn(renderToStaticMarkup(<SceneSvg scene={scene} />)));
  });
  test("a label cannot break out of the drawing", () => {
    const house = { ...ATTIC_HOUSE, rooms: [['</text><script>alert("x")</script>', "hall", "b & b"]] };
    const svg = sceneSvgText(houseSectionScene(house, WIDE), { id: 'p"><script>', fonts: FONTS });
    expect(svg).not.toContain("<script");
    expect(svg).toContain("b &amp; b");
  });
});
