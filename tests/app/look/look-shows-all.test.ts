import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

const APP = new URL("../../../app/", import.meta.url);
const read = (path: string) => readFileSync(new URL(path, APP), "utf8");
const namesIn = (folder: string) =>
  readdirSync(new URL(folder, APP), { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".tsx"));

const partsOf = (source: string) =>
  [...source.matchAll(/^export (?:async )?function ([A-Z]\w*)/gm)].map(([, name]) => name!);
const kit = namesIn("design/").flatMap((file) => partsOf(read(`design/${file}`)));
const shown = namesIn("look/")
  .map((file) => read(`look/${file}`))
  .join("\n");
const isShown = (part: string, sources = shown) => new RegExp(`<${part}[\\s/>]`).test(sources);

/** Seen on /look as a part of another one, or around the page itself. */
const WITHIN: Readonly<Record<string, string>> = {
  FieldFrame: "TextField",
  HintAndError: "ChoiceCards",
  FieldNote: "ChoiceCards",
  SceneSvg: "Picture",
  SiteHeader: "the head of every page",
};

describe("/look shows the kit", () => {
  test("each part of app/design has an entry", () => {
    expect(kit.length).toBeGreaterThan(25);
    expect(kit.filter((part) => !isShown(part) && !(part in WITHIN))).toEqual([]);
    expect(isShown("PartThatIsNotThere")).toBe(false);
  });
  test("what is shown within another part names parts that are there", () => {
    for (const part of Object.keys(WITHIN)) expect(kit).toContain(part);
  });
  test("buttons and fields are shown at rest, under the pointer, with the focus, disabled and in error", () => {
    const states = read("look/states-chapter.tsx");
    for (const state of ["rest", "hover", "focus"]) expect(states).toContain(`id: "${state}"`);
    expect(states).toMatch(/<Button disabled>/);
    expect(shown).toMatch(/error="/);
    // What is shown as hover and focus is what a pointer and a key bring about: one rule for both.
    for (const file of ["design/button.module.css", "design/field.module.css"]) {
      expect(read(file)).toMatch(/:is\(:hover, \[data-shown="hover"\] \*\)/);
      expect(read(file)).toMatch(/\[data-shown="focus"\] \*\)/);
    }
  });
});
