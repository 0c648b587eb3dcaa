import { createElement } from "react";
import type { DocumentView } from "../document-view.ts";
import { DocumentHtml, type HtmlFrame } from "./document-html.tsx";

/** Any document as complete HTML that needs no script. */
export async function renderDocumentPage(view: DocumentView, frame: HtmlFrame): Promise<string> {
  // Not a static import: the web framework refuses one in its own routes, and the page is no part of its tree.
  const { renderToStaticMarkup } = await import("react-dom/server");
  return `<!doctype html>${renderToStaticMarkup(createElement(DocumentHtml, { view, frame }))}`;
}
