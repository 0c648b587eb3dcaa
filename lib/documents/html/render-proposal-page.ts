import { createElement } from "react";
import { ProposalPage, type ProposalPageProps } from "./proposal-page.tsx";

/** The homeowner's page as complete HTML. */
export async function renderProposalPage(props: ProposalPageProps): Promise<string> {
  // Not a static import: the web framework refuses one in its own routes, and the page is no part of its tree.
  const { renderToStaticMarkup } = await import("react-dom/server");
  return `<!doctype html>${renderToStaticMarkup(createElement(ProposalPage, props))}`;
}
