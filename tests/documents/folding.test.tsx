import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { type Block, type DocumentView, openBlocks } from "#lib/documents/document-view.ts";
import { DocumentHtml } from "#lib/documents/html/document-html.tsx";
import { proposalView } from "#lib/documents/proposal-view.ts";
import { EXAMPLE_FILES } from "#tests/estimate/example-jobs.ts";
import { estimatedExample } from "./estimated-examples.ts";
import { blockText, sectionOf } from "./view-text.ts";

/** Words that stand open on the homeowner's page, cards and labels counted. At some 240 words a minute: five minutes. */
const MOST_OPEN_WORDS = 1200;
/** Verdict, share lost, price and reason: half a minute, before anything else. */
const MOST_LEAD_WORDS = 120;

const viewOf = async (file: string, language: "en" | "es" = "en") =>
  proposalView({ ...(await estimatedExample(file)), language, isoDate: "2026-11-25" });

const wordsOf = (texts: readonly string[]): number => texts.join(" ").split(/\s+/).length;

/** What one sees without pressing anything. */
function openTexts(view: DocumentView): string[] {
  const closed = (block: Block): string[] => (block.kind === "more" ? [block.label] : blockText(block));
  return [
    view.heading,
    ...view.lead,
    ...view.notices.flatMap(({ title, text }) => [title, text]),
    ...view.sections.flatMap(({ title, audience, isFolded, blocks }) => [
      title,
      ...(audience === "technical" || isFolded ? [] : blocks.flatMap(closed)),
    ]),
  ];
}

describe("the homeowner's page folds its detail", () => {
  test.each(EXAMPLE_FILES)("%s: what stands open is read in a few minutes", async (file) => {
    const view = await viewOf(file);
    const open = wordsOf(openTexts(view));
    const all = wordsOf(view.sections.flatMap(({ blocks }) => blocks.flatMap(blockText)));
    expect(open).toBeLessThan(MOST_OPEN_WORDS);
    expect(all).toBeGreaterThan(1.8 * open);
    expect(wordsOf([view.heading, ...view.lead])).toBeLessThan(MOST_LEAD_WORDS);
  });

  test("price, saving, chance, doing nothing, what may hurt and how it is proved stand open", async () => {
    const view = await viewOf("cold-attic-furnace.json");
    const open = openTexts(view).join("\n");
    for (const words of [
      "worth sealing",
      "$989.62",
      "Should save a year",
      "On next January’s bill",
      "Chance of the goal",
      "cost you about",
      "A carbon monoxide alarm that works",
      "Things that burn fuel are tested before and after",
      "How and when you pay",
      "If the goal is missed",
    ])
      expect(open, words).toContain(words);
  });

  test("a caution is never out of sight: it stands open, or its name does", async () => {
    for (const file of EXAMPLE_FILES) {
      const view = await viewOf(file);
      const open = sectionOf(view, "safety")
        .blocks.flatMap((block) => (block.kind === "more" ? [block.label] : blockText(block)))
        .join("\n")
        .toLowerCase();
      const { result } = await estimatedExample(file);
      const notices = openBlocks(sectionOf(view, "safety").blocks).filter(({ kind }) => kind === "notice");
      expect(notices).toHaveLength(result.cautions.length);
      for (const notice of notices) expect(open).toContain(blockText(notice)[0]!.toLowerCase());
    }
  });

  test("by the browser's own disclosure, without script, and all of it is in the page", async () => {
    const view = await viewOf("cold-attic-furnace.json", "es");
    const html = renderToStaticMarkup(
      <DocumentHtml view={view} frame={{ fingerprint: "0".repeat(64), links: [], skipLabel: "skip" }} />,
    );
    const labels = view.sections.flatMap(({ blocks }) =>
      blocks.flatMap((each) => (each.kind === "more" ? each.label : [])),
    );
    expect(labels.length).toBeGreaterThan(8);
    expect(html.match(/<details class="more"><summary>/g)).toHaveLength(labels.length);
    expect(html).not.toContain("<script");
    const text = html.replaceAll("&#x27;", "'").replaceAll("&quot;", '"').replaceAll("&amp;", "&");
    const missing = view.sections
      .flatMap(({ blocks }) => openBlocks(blocks).flatMap(blockText))
      .filter((words) => !text.includes(words));
    expect(missing).toEqual([]);
  });
});
