import { describe, expect, test } from "vitest";
import { proposalView } from "#lib/documents/proposal-view.ts";
import { EXAMPLE_FILES } from "#tests/estimate/example-jobs.ts";
import { estimatedExample } from "./estimated-examples.ts";
import { countText, fernandezHuerta, fleschKincaidGrade } from "./reading-grade.ts";
import { homeownerSentences } from "./view-text.ts";

const PLAIN_EASE = 60;
const GRADE = 8;

describe("a homeowner of eight years of school can read it", () => {
  test("the measure itself tells plain from learned (constructed texts)", () => {
    const plain = countText("We sealed the duct. It took a day. The crew was kind.", "en");
    const learned = countText(
      "Notwithstanding considerable instrumentation uncertainty, distribution effectiveness demonstrably deteriorated throughout the investigation.",
      "en",
    );
    expect(fleschKincaidGrade(plain)).toBeLessThan(3);
    expect(fleschKincaidGrade(learned)).toBeGreaterThan(GRADE + 4);
    expect(fernandezHuerta(countText("Sellamos el ducto. Tomó un día.", "es"))).toBeGreaterThan(PLAIN_EASE + 10);
    expect(
      fernandezHuerta(
        countText(
          "Indudablemente deterioraríamos significativamente la incertidumbre instrumental correspondiente.",
          "es",
        ),
      ),
    ).toBeLessThan(PLAIN_EASE);
  });

  test("counts syllables as the dictionary does", () => {
    expect(countText("house leaks about seventy", "en").syllables).toBe(1 + 1 + 2 + 3);
    expect(countText("cuesta ducto energía aire", "es").syllables).toBe(2 + 2 + 4 + 2);
  });

  test.each(EXAMPLE_FILES)("%s in English: grade 8 or below (Flesch-Kincaid)", async (file) => {
    const { job, result } = await estimatedExample(file);
    const text = homeownerSentences(proposalView({ job, result, language: "en", isoDate: "2026-11-25" })).join(" ");
    expect(fleschKincaidGrade(countText(text, "en"))).toBeLessThanOrEqual(GRADE);
  });

  test.each(EXAMPLE_FILES)("%s in Spanish: plain or easier (Fernández Huerta)", async (file) => {
    const { job, result } = await estimatedExample(file);
    const text = homeownerSentences(proposalView({ job, result, language: "es", isoDate: "2026-11-25" })).join(" ");
    expect(fernandezHuerta(countText(text, "es"))).toBeGreaterThanOrEqual(PLAIN_EASE);
  });

  test("no English sentence is longer than 30 words", async () => {
    const { job, result } = await estimatedExample("hot-humid-two-systems.json");
    const sentences = homeownerSentences(proposalView({ job, result, language: "en", isoDate: "2026-11-25" }))
      .join(" ")
      .split(/(?<=[.!?:])\s/);
    expect(sentences.length).toBeGreaterThan(60);
    expect(sentences.filter((sentence) => sentence.split(/\s+/).length > 30)).toEqual([]);
  });
});
