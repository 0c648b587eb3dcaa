import { certificateView } from "#lib/documents/certificate-view.ts";
import { crewSheetView } from "#lib/documents/crew-sheet-view.ts";
import { type DocumentView, openBlocks } from "#lib/documents/document-view.ts";
import type { Paper } from "#lib/documents/pdf/paper.ts";
import { proposalView } from "#lib/documents/proposal-view.ts";
import { renderDocumentPdf } from "#lib/documents/render-document-pdf.ts";
import { retestSheetView } from "#lib/documents/retest-sheet-view.ts";
import { estimatedExample } from "./estimated-examples.ts";
import { type PdfPage, pdfPages } from "./pdf-lines.ts";

export const PAPERS_OF_JOB = {
  proposal: proposalView,
  "crew sheet": crewSheetView,
  "retest sheet": retestSheetView,
  certificate: certificateView,
} as const;

const FOOT_POINTS = 50;
/** Lines that a last page has at least; a list ends with its last four items together. */
const LEAST_LAST_LINES = 3;
/** Heading and one line: nothing of what they are about stands with them. */
const LEAST_HEAD_LINES = 2;

const inBody = ({ lines, height }: PdfPage) =>
  lines.filter(({ bottom }) => bottom < height - FOOT_POINTS).sort((one, other) => one.top - other.top);

/**
 * What a reader would dislike on the sheets: a heading whose picture or cards begin on the next page, and a last page
 * with a line or two.
 */
export function pageFaults(view: DocumentView, pages: readonly PdfPage[]): string[] {
  const headings = new Set(
    view.sections
      .filter(({ blocks }) =>
        openBlocks(blocks)
          .slice(0, 2)
          .some(({ kind }) => kind === "picture" || kind === "options"),
      )
      .map(({ title }) => title),
  );
  return pages.flatMap((page, index) => {
    const lines = inBody(page);
    const isLast = index === pages.length - 1;
    const lonely = lines.filter(
      (line) =>
        !isLast &&
        headings.has(line.text) &&
        lines.filter(({ top }) => top > line.bottom - 2).length <= LEAST_HEAD_LINES,
    );
    return [
      ...lonely.map(({ text }) => `page ${index + 1}: “${text}” is left behind by what it heads`),
      ...(isLast && pages.length > 1 && lines.length < LEAST_LAST_LINES
        ? [`the last page has ${lines.length} lines`]
        : []),
    ];
  });
}

export async function faultsOfPaper(
  file: string,
  kind: keyof typeof PAPERS_OF_JOB,
  { paper, language }: { paper: Paper; language: "en" | "es" },
): Promise<string[]> {
  const view = PAPERS_OF_JOB[kind]({ ...(await estimatedExample(file)), language, isoDate: "2026-11-25" });
  const bytes = await renderDocumentPdf(view, { paper, fingerprint: "0123456789abcdef".repeat(4) });
  return pageFaults(view, pdfPages(bytes)).map((fault) => `${file}, ${kind}, ${paper}, ${language}: ${fault}`);
}
