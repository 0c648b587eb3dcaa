import { isValidElement, type ReactNode } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { DocumentHtml } from "#lib/documents/html/document-html.tsx";
import { DocumentPdf } from "#lib/documents/pdf/document-pdf.tsx";
import type { Paper } from "#lib/documents/pdf/paper.ts";
import { proposalView } from "#lib/documents/proposal-view.ts";
import { renderDocumentPdf } from "#lib/documents/render-document-pdf.ts";
import { EXAMPLE_FILES } from "#tests/estimate/example-jobs.ts";
import { estimatedExample, largeExample } from "./estimated-examples.ts";

const FINGERPRINT = "0123456789abcdef".repeat(4);

/** All text of a tree of elements in reading order, function components called as React would. */
function textOf(node: ReactNode): string[] {
  if (typeof node === "string" || typeof node === "number") return [String(node)];
  if (Array.isArray(node)) return node.flatMap(textOf);
  if (!isValidElement(node)) return [];
  const { type, props } = node as { type: unknown; props: Record<string, unknown> };
  if (typeof type === "function") return textOf((type as (props: unknown) => ReactNode)(props));
  return textOf(props.children as ReactNode);
}

const numbersIn = (text: string): string[] => text.match(/\d[\d,]*(?:\.\d+)?/g) ?? [];

const htmlText = (html: string): string =>
  html
    .replace(/<style>.*?<\/style>/s, "")
    .replace(/<svg.*?<\/svg>/gs, "")
    .replace(/<[^>]+>/g, "\n")
    .replaceAll("&#x27;", "'");

const frame = { fingerprint: FINGERPRINT, links: [], skipLabel: "skip" };

describe("one view, two renderings", () => {
  test.each(
    EXAMPLE_FILES.flatMap((file) => [
      { file, language: "en" as const },
      { file, language: "es" as const },
    ]),
  )("$file ($language): page and paper say the same numbers", async ({ file, language }) => {
    const view = proposalView({ ...(await estimatedExample(file)), language, isoDate: "2026-11-25" });
    const page = numbersIn(htmlText(renderToStaticMarkup(<DocumentHtml view={view} frame={frame} />)));
    const paper = numbersIn(
      textOf(DocumentPdf({ view, frame: { paper: "letter", fingerprint: FINGERPRINT } })).join("\n"),
    );
    const scale = new Set(page);
    expect(page.length).toBeGreaterThan(150);
    // Letters inside a drawing, such as its ticks, are in both drawings; they are left out of the page's side here.
    expect([...new Set(paper)].filter((number) => !scale.has(number) && !isInDrawing(view, number))).toEqual([]);
    expect([...scale].filter((number) => !new Set(paper).has(number))).toEqual([]);
  });

  test("a changed number in one of them would be seen", () => {
    expect(numbersIn("about $1,083.97 or 12 in 100")).toEqual(["1,083.97", "12", "100"]);
  });

  test("the page has no script, asks nobody else's server, and shows a name as text", async () => {
    const { job, result } = await estimatedExample("cold-attic-furnace.json");
    const label = `<script>alert("x")</script> & Sons`;
    const view = proposalView({
      job: { ...job, house: { ...job.house, label } },
      result,
      language: "en",
      isoDate: "2026-11-25",
    });
    const html = renderToStaticMarkup(<DocumentHtml view={view} frame={frame} />);
    expect(html).not.toContain("<script");
    expect(html).not.toMatch(/(?:src|href)="?(?:https?:)?\/\//);
    expect(html).toContain("&lt;script&gt;");
    expect(html).toContain('lang="en-US"');
  });
});

function isInDrawing(view: ReturnType<typeof proposalView>, number: string): boolean {
  const drawn = renderToStaticMarkup(<DocumentHtml view={view} frame={frame} />).match(/<svg.*?<\/svg>/gs) ?? [];
  return drawn.some((svg) => numbersIn(svg.replace(/<[^>]+>/g, "\n")).includes(number));
}

describe("the proposal on paper", () => {
  const render = async (paper: Paper, language: "en" | "es" = "en") => {
    const view = proposalView({
      ...(await estimatedExample("cold-attic-furnace.json")),
      language,
      isoDate: "2026-11-25",
    });
    return Buffer.from(await renderDocumentPdf(view, { paper, fingerprint: FINGERPRINT })).toString("latin1");
  };

  test("the same view gives the same bytes", async () => {
    expect(await render("letter")).toBe(await render("letter"));
  });

  test.each([
    { paper: "letter" as const, box: /\/MediaBox \[0 0 612 792\]/ },
    { paper: "a4" as const, box: /\/MediaBox \[0 0 595\.28\d* 841\.89\d*\]/ },
  ])("$paper: title, language, bookmarks and sheet are set", async ({ paper, box }) => {
    const file = await render(paper, "es");
    expect(file).toContain("/Lang (es-US)");
    expect(file).toContain("/DisplayDocTitle true");
    expect(file).toContain("/Title (Seguridad)");
    expect(file).toMatch(box);
  });

  test.each(["letter", "a4"] as const)("a job of sixty leaks and four options lays out on %s", async (paper) => {
    const view = proposalView({ ...(await largeExample()), language: "en", isoDate: "2026-11-25" });
    const file = Buffer.from(await renderDocumentPdf(view, { paper, fingerprint: FINGERPRINT })).toString("latin1");
    const pages = file.match(/\/Type \/Page\b/g)?.length ?? 0;
    expect(pages).toBeGreaterThan(14);
    expect(pages).toBeLessThan(32);
  });
});
