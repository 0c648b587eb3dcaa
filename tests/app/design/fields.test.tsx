import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { ChoiceCards } from "#app/design/choice-cards.tsx";
import { Notice } from "#app/design/notice.tsx";
import { Picture } from "#app/design/picture.tsx";
import { QuantityField } from "#app/design/quantity-field.tsx";
import { TripRail } from "#app/design/trip-rail.tsx";
import { HUNDRED_DOLLARS } from "#app/look/sample-figures.ts";
import { hundredDollarsScene } from "#lib/pictures/hundred-dollars.ts";

/** Ids that an element names must exist on the page. */
function danglingIds(html: string): string[] {
  const named = [...html.matchAll(/(?:aria-describedby|aria-labelledby|for)="([^"]+)"/g)].flatMap(([, ids = ""]) =>
    ids.split(" "),
  );
  return named.filter((id) => !html.includes(`id="${id}"`));
}

describe("a number with its unit", () => {
  const html = renderToStaticMarkup(
    <QuantityField
      label="Fan pressure, in pascals"
      unit="Pa"
      hint="From the gauge."
      error="Fan pressure must be between 5 and 600 pascals"
      note="Read as 2100."
      defaultValue="2100"
    />,
  );
  test("is a text input with a decimal keyboard, never type=number", () => {
    expect(html).toContain('type="text"');
    expect(html).toContain('inputMode="decimal"');
    expect(html).not.toContain('type="number"');
  });
  test("is described by its hint, its error and its note, and is marked as wrong", () => {
    expect(danglingIds(html)).toEqual([]);
    expect(html.match(/aria-describedby="([^"]+)"/)?.[1]?.split(" ")).toHaveLength(3);
    expect(html).toContain('aria-invalid="true"');
  });
  test("keeps what was typed", () => {
    expect(html).toContain('value="2100"');
  });
});

describe("one of a few", () => {
  test("is a group of native radio buttons with a legend, so it works without script", () => {
    const html = renderToStaticMarkup(
      <ChoiceCards
        label="Restrictor"
        name="restrictor"
        hint="On the inlet."
        defaultValue="small"
        choices={[
          { value: "small", label: "small" },
          { value: "none", label: "none" },
        ]}
      />,
    );
    expect(html).toMatch(/<fieldset[^>]*>.*<legend/s);
    expect(html.match(/type="radio"/g)).toHaveLength(2);
    expect(html.match(/checked=""/g)).toHaveLength(1);
    expect(danglingIds(html)).toEqual([]);
  });
});

describe("what is said back", () => {
  test.each([
    ["info", "Note"],
    ["doubt", "Doubtful"],
    ["problem", "Problem"],
    ["good", "Good"],
  ] as const)("a %s has its word beside the sign", (kind, word) => {
    expect(renderToStaticMarkup(<Notice kind={kind} title="Step 3" />)).toContain(word);
  });
  test("a step of the trip says its state in words", () => {
    const html = renderToStaticMarkup(
      <TripRail
        steps={[
          { id: "a", label: "House", href: "/a", state: "done" },
          { id: "b", label: "Ducts", href: "/b", state: "current" },
        ]}
      />,
    );
    expect(html).toMatch(/House<span[^>]*>, (<!-- -->)?done/);
    expect(html).toContain('aria-current="step"');
  });
});

describe("a picture on the page", () => {
  const html = renderToStaticMarkup(<Picture build={(options) => hundredDollarsScene(HUNDRED_DOLLARS, options)} />);
  test("has a heading, its finding, both drawings and a table with the same numbers", () => {
    expect(html).toMatch(/<h3[^>]*>Where each \$100 for heating goes<\/h3>/);
    expect(html).toContain("Of every $100 for heating, $63 reaches the rooms today; after sealing it is $84.");
    expect(html.match(/<svg/g)).toHaveLength(2);
    expect(html).toMatch(/<caption[^>]*>Where each \$100 for heating goes/);
    expect(html.match(/scope="row"/g)).toHaveLength(4);
    expect(danglingIds(html)).toEqual([]);
  });
});
