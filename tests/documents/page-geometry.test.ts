import { beforeAll, describe, expect, test } from "vitest";
import { crewSheetView } from "#lib/documents/crew-sheet-view.ts";
import { type DocumentView, openBlocks } from "#lib/documents/document-view.ts";
import { PAPERS } from "#lib/documents/pdf/paper.ts";
import { proposalView } from "#lib/documents/proposal-view.ts";
import { renderDocumentPdf } from "#lib/documents/render-document-pdf.ts";
import { largeExample } from "./estimated-examples.ts";
import { faultsOfPaper, pageFaults } from "./page-faults.ts";
import { type PdfLine, type PdfPage, pdfPages, pdfTextInOrder } from "./pdf-lines.ts";

const FINGERPRINT = "0123456789abcdef".repeat(4);
/** Below this the foot of the sheet stands, in points from its lower edge. */
const FOOT_POINTS = 50;
const LEAST_MARGIN_POINTS = 30;
/** What belongs to a heading or a caption follows within this, in points. */
const FOLLOWS_WITHIN_POINTS = 60;

const VIEWS = { proposal: proposalView, "crew sheet": crewSheetView };
const CASES = [
  { paper: "letter", kind: "proposal", language: "en" },
  { paper: "a4", kind: "proposal", language: "es" },
  { paper: "a4", kind: "crew sheet", language: "en" },
  { paper: "letter", kind: "crew sheet", language: "es" },
] as const;

/** Everything that must not be the last thing on a page: titles of sections, subheadings, captions of tables. */
function leaders(view: DocumentView): string[] {
  return view.sections.flatMap(({ title, blocks }) => [
    title,
    ...openBlocks(blocks).flatMap((block) => {
      if (block.kind === "subheading") return [block.text];
      return block.kind === "table" ? [block.table.caption] : [];
    }),
  ]);
}

const inBody = (page: PdfPage) => page.lines.filter(({ bottom }) => bottom < page.height - FOOT_POINTS);

/** Leaders of a page after which nothing follows on the same page. */
function orphansOf(page: PdfPage, words: ReadonlySet<string>): string[] {
  const lines = inBody(page);
  const follows = (leader: PdfLine) =>
    lines.some(({ top }) => top >= leader.bottom - 2 && top - leader.bottom < FOLLOWS_WITHIN_POINTS);
  return lines.filter((line) => words.has(line.text) && !follows(line)).map(({ text }) => text);
}

describe.each(CASES)("sixty leaks and four options, $kind on $paper in $language", ({ paper, kind, language }) => {
  let view: DocumentView;
  let pages: readonly PdfPage[];
  let text: string;
  beforeAll(async () => {
    view = VIEWS[kind]({ ...(await largeExample()), language, isoDate: "2026-11-25" });
    const bytes = await renderDocumentPdf(view, { paper, fingerprint: FINGERPRINT });
    pages = pdfPages(bytes);
    text = pdfTextInOrder(bytes);
  });

  test("every page has the size of its sheet, and nothing stands outside its margins", () => {
    const { widthPoints, heightPoints } = PAPERS[paper];
    expect(pages.length).toBeGreaterThan(3);
    for (const page of pages) {
      expect([page.width, page.height].map(Math.round)).toEqual([widthPoints, heightPoints].map(Math.round));
      const outside = page.lines.filter(
        ({ left, right, top, bottom }) =>
          left < LEAST_MARGIN_POINTS ||
          right > page.width - LEAST_MARGIN_POINTS ||
          top < LEAST_MARGIN_POINTS ||
          bottom > page.height - LEAST_MARGIN_POINTS / 2,
      );
      expect(outside).toEqual([]);
    }
  });

  test("no heading and no caption is the last thing on its page", () => {
    const words = new Set(leaders(view));
    const seen = pages.flatMap((page) => inBody(page).filter((line) => words.has(line.text)));
    expect(seen.length).toBeGreaterThan(view.sections.length);
    expect(pages.flatMap((page) => orphansOf(page, words))).toEqual([]);
  });

  test("no page is left nearly empty but the last", () => {
    for (const page of pages.slice(0, -1)) {
      const lowest = Math.max(...inBody(page).map(({ bottom }) => bottom));
      expect(lowest).toBeGreaterThan(page.height * 0.4);
    }
  });

  test("a row of a table is not torn: the second line of a long name stands on the page of its first", () => {
    const starts = pages.flatMap((page) =>
      page.lines.filter(({ text: line }) => line.includes("A leak with a long")).map((line) => ({ page, line })),
    );
    expect(starts.length).toBeGreaterThan(50);
    for (const { page, line } of starts) {
      if (/number \d+/.test(line.text)) continue;
      // The number of the leak may stand on the same line, so the name begins a little to the right.
      const end = page.lines.some(
        (other) =>
          /\b(row|needs|two|lines|number)\b/.test(other.text) &&
          other.left - line.left > -3 &&
          other.left - line.left < 45 &&
          other.top > line.top &&
          other.top - line.top < 20,
      );
      expect(end, line.text).toBe(true);
    }
  });

  test("is read out in the order of the view", () => {
    let from = 0;
    for (const { title } of view.sections) {
      const at = text.indexOf(title, from);
      expect(at, title).toBeGreaterThanOrEqual(from);
      from = at;
    }
  });
});

test("the check sees a heading alone at the foot of a page", () => {
  const line = (words: string, top: number): PdfLine => ({ text: words, left: 50, right: 200, top, bottom: top + 14 });
  const page: PdfPage = {
    width: 612,
    height: 792,
    lines: [line("Text", 600), line("Safety", 700), line("Page 1", 770)],
  };
  expect(orphansOf(page, new Set(["Safety"]))).toEqual(["Safety"]);
});

test.each([
  ["hot-humid-two-systems.json", "proposal", "letter", "en"],
  ["hot-humid-two-systems.json", "crew sheet", "a4", "en"],
  ["cold-attic-furnace.json", "retest sheet", "a4", "en"],
  ["mixed-crawlspace-retest.json", "certificate", "a4", "es"],
] as const)(
  "%s, %s on %s in %s: no picture leaves its heading behind, no last page holds a line or two",
  async (file, kind, paper, language) => {
    // Every example, paper and language is looked at in the proofs.
    expect(await faultsOfPaper(file, kind, { paper, language })).toEqual([]);
  },
);

test("the check sees cards that left their heading behind, and a last page of one line", () => {
  const line = (words: string, top: number): PdfLine => ({ text: words, left: 50, right: 200, top, bottom: top + 14 });
  const sheet = (lines: PdfLine[]): PdfPage => ({ width: 612, height: 792, lines });
  const view = {
    sections: [{ id: "options", title: "Options", audience: "homeowner", blocks: [{ kind: "options", options: [] }] }],
  } as unknown as DocumentView;
  const pages = [sheet([line("Options", 680), line("You choose.", 700)]), sheet([line("The essential", 60)])];
  expect(pageFaults(view, pages)).toHaveLength(2);
});
