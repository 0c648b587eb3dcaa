import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { SceneSvg } from "#app/design/scene-svg.tsx";
import { ATTIC_HOUSE } from "#app/look/sample-houses.ts";
import { houseSectionScene } from "#lib/pictures/house/house-section.ts";
import { patternMarks } from "#lib/pictures/pattern-marks.ts";
import { WIDE_WIDTH } from "#lib/pictures/scene.ts";

const scene = houseSectionScene(ATTIC_HOUSE, { width: WIDE_WIDTH });

describe("a scene on the screen", () => {
  test("is one image whose name is its heading and its finding", () => {
    const html = renderToStaticMarkup(<SceneSvg scene={scene} />);
    expect(html).toMatch(/^<svg[^>]*role="img"/);
    expect(html).toContain(`${scene.title}. ${scene.finding}</title>`);
    expect(html).not.toContain("<a ");
  });
  test("has a named link for every leak where leaks lead somewhere", () => {
    const html = renderToStaticMarkup(<SceneSvg scene={scene} itemHref={(id) => `#leak-${id}`} />);
    expect(html).toMatch(/^<svg[^>]*role="group"/);
    expect(html.match(/<a href="#leak-/g)).toHaveLength(5);
    expect(html).toContain('aria-label="Leak 1: supply plenum joint, 121 cfm at 25 Pa, open"');
  });
  test("draws the marks of lost air, so that its meaning does not rest on color", () => {
    const html = renderToStaticMarkup(<SceneSvg scene={scene} />);
    const hatched = scene.shapes
      .flatMap((shape) => (shape.kind === "item" ? shape.shapes : []))
      .filter((shape) => shape.kind === "circle" && shape.pattern === "hatched");
    expect(hatched).toHaveLength(4);
    for (const shape of hatched) {
      if (shape.kind === "circle") expect(html).toContain(patternMarks(shape));
    }
  });
});
