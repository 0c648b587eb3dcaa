import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import MethodPage from "#app/methods/[id]/page.tsx";
import { METHODS } from "#lib/methods/catalogue.ts";
import { formFields } from "#lib/methods/form-fields.ts";
import { citationText } from "#lib/sources/source-title.ts";

const render = async (id: string, texts: Record<string, string> = {}) =>
  renderToStaticMarkup(await MethodPage({ params: Promise.resolve({ id }), searchParams: Promise.resolve(texts) }));
/** As React writes it into a page. */
const inHtml = (text: string) => renderToStaticMarkup(<i>{text}</i>).slice(3, -4);

describe("the page of each method", () => {
  test.each(METHODS.map((card) => [card.id, card] as const))("%s", async (id, card) => {
    const page = await render(id);
    for (const text of [card.equation, card.validRange, card.leftOut]) expect(page).toContain(inHtml(text));
    for (const source of card.sources) expect(page).toContain(inHtml(citationText(source)));
    const fields = formFields(card);
    expect(fields.length).toBeGreaterThan(0);
    for (const { name } of fields) expect(page).toMatch(new RegExp(`<(input|textarea)[^>]* name="${name}"`));
    const numbers = card.checks.reduce((sum, { expected }) => sum + Object.keys(expected).length, 0);
    expect(page.match(/✓ met/g)).toHaveLength(numbers);
    expect(page).not.toContain("✗ missed");
    expect(page).toContain(numbers === 0 ? "no published value" : `All ${numbers} values come out right.`);
  });
  test("its form is live: other inputs, another answer; one out of range is named", async () => {
    const asked = { flowCfm: "150", ductPressurePa: "18" };
    const fields = formFields(METHODS.find(({ id }) => id === "leakage-at-pressure")!).map(({ name }) => name);
    for (const name of Object.keys(asked)) expect(fields).toContain(name);
    // 150 · (25/18)^.6 = 182.68, by hand.
    expect(await render("leakage-at-pressure", asked)).toContain("182.68");
    expect(await render("leakage-at-pressure", { ...asked, ductPressurePa: "-3" })).toContain('aria-invalid="true"');
  });
});
