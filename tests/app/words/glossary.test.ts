import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, test } from "vitest";
import { jobFieldSpecs } from "#app/jobs/trip/field-spec.ts";
import { findTerms, termsOf } from "#app/words/find-terms.ts";
import { GLOSSARY, type GlossaryEntry } from "#app/words/glossary.ts";

/** Words that the screens say: the text of a file without its code. Rough, but it errs toward too much. */
function wordsOf(file: string): string {
  const code = readFileSync(file, "utf8")
    .replaceAll(/^import .*$/gm, "")
    .replaceAll(/^\s*(\/\/|\*|\/\*).*$/gm, "");
  const literals = [...code.matchAll(/"([^"\n]*[ a-z][^"\n]*)"|`([^`]*)`|>([^<>{}]+)</g)];
  return literals.map(([, plain, template, markup]) => plain ?? template ?? markup ?? "").join("\n");
}
const filesIn = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => join(folder, name));

const FIELDS = Object.values(jobFieldSpecs())
  .map(({ title, description }) => `${title}. ${description ?? ""}`)
  .join("\n");
const SCREENS = ["app/jobs", "app/quick", "app/setup", "app/practice"].flatMap(filesIn).map(wordsOf).join("\n");
const ENGINE = ["lib/estimate", "lib/measure", "lib/scope", "lib/setup", "lib/retest"]
  .flatMap(filesIn)
  .map(wordsOf)
  .join("\n");
const SAID = `${FIELDS}\n${SCREENS}\n${ENGINE}\n${readFileSync("lib/job/leak-kinds.ts", "utf8")}`;

/**
 * The vocabulary of the trade, so far as it may turn up here: headings of ASTM E1554 and E779, ANSI/RESNET 380,
 * ASHRAE 152, and of the nameplates. From memory; none of it is taken from our own screens.
 */
const TRADE = [
  "cfm",
  "pressure pan",
  "plenum",
  "static pressure",
  "external static pressure",
  "take-off",
  "boot",
  "register",
  "return grille",
  "air handler",
  "baseline",
  "flow straightener",
  "flow restrictor",
  "calibration",
  "blower-door subtraction",
  "Delta-Q",
  "total leakage",
  "leakage to outside",
  "rough-in",
  "R-value",
  "SEER",
  "COP",
  "AFUE",
  "sensible heat ratio",
  "latent",
  "regain",
  "balance temperature",
  "zone pressure",
  "building cavity",
  "duct board",
  "mastic",
  "therm",
  "ton",
  "discount rate",
  "deemed savings",
  "heat loss coefficient",
  "conditioned floor area",
];
const isSaid = (term: string): boolean => new RegExp(`(?<![\\w-])${term}s?(?![\\w-])`, "i").test(SAID);

describe("the glossary", () => {
  it("has an entry for each trade term that a screen uses", () => {
    const used = TRADE.filter(isSaid);
    expect(used.length).toBeGreaterThan(25);
    expect(["economizer", "chilled beam", "static regain"].filter(isSaid)).toEqual([]);
    expect(used.filter((term) => termsOf(term).length === 0)).toEqual([]);
  });

  it("has an entry for each abbreviation among the fields", () => {
    const EVERYDAY = new Set(["ZIP", "SHA", "HH", "MM", "YYYY", "DD", "CO", "II", "A", "I"]);
    const found = new Set(
      [...FIELDS.matchAll(/\b[A-Z]{2,}\b/g)].map(([word]) => word).filter((word) => !EVERYDAY.has(word)),
    );
    expect(found.size).toBeGreaterThan(1);
    expect([...found].filter((word) => termsOf(word).length === 0)).toEqual([]);
  });

  it("has no entry that nothing on the screens asks for", () => {
    const unused = GLOSSARY.filter(
      (entry: GlossaryEntry) => ![entry.term, ...(entry.also ?? [])].some((words) => isSaid(words)),
    );
    expect(unused.map(({ term }) => term)).toEqual([]);
  });

  it("says it in few words, each entry once", () => {
    for (const { term, meaning } of GLOSSARY) {
      expect(meaning.length, term).toBeLessThanOrEqual(220);
      expect(meaning, term).toMatch(/\.$/);
    }
    const all = GLOSSARY.flatMap((entry: GlossaryEntry) => [entry.term, ...(entry.also ?? [])]);
    expect(new Set(all).size).toBe(all.length);
  });
});

test.each([
  ["At 300 cfm the return grille whistles.", ["cfm", "return grille"]],
  ["The longest wins: external static pressure.", ["external static pressure"]],
  ["cfm and CFM are one; the second is not marked.", ["cfm"]],
  ["A printer plenums unconditioned reboot.", ["plenum"]],
  ["Read at 25 Pa, not at 250 Pa.", ["at 25 Pa"]],
])("%s", (sentence, terms) => {
  expect(termsOf(sentence).map(({ term }) => term)).toEqual(terms);
  const pieces = findTerms(sentence);
  expect(pieces.map((piece) => (typeof piece === "string" ? piece : piece.words)).join("")).toBe(sentence);
});
