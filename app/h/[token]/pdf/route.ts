import type { NextRequest } from "next/server";
import { otherPaper } from "#app/h/papers-of-order.ts";
import { languageOf, proposalByLink } from "#app/h/proposal-by-link.ts";
import { readIssuedProposal } from "#lib/documents/issued-proposal.ts";
import { renderDocumentPdf } from "#lib/documents/render-document-pdf.ts";

/** The same paper as a PDF file, as it was issued. */
export async function GET(request: NextRequest, { params }: { params: Promise<{ token: string }> }): Promise<Response> {
  const { token } = await params;
  const link = await proposalByLink(token);
  if (!link) return new Response("No paper is found at this link.", { status: 404 });
  const own = await link.read();
  const of = request.nextUrl.searchParams.get("of");
  const { proposal } = (of ? otherPaper(await link.papersOfOrder(own), of) : undefined) ?? own;
  const { languages, paper, letterhead } = readIssuedProposal(proposal.view);
  const wanted = request.nextUrl.searchParams.get("paper");
  const bytes = await renderDocumentPdf(languages[languageOf(request.nextUrl.searchParams.get("lang"))], {
    paper: wanted === "a4" || wanted === "letter" ? wanted : paper,
    fingerprint: proposal.contentHash,
    letterhead,
    link: `${request.nextUrl.origin}/h/${token}`,
  });
  return new Response(new Uint8Array(bytes), {
    headers: {
      "content-type": "application/pdf",
      "content-disposition": `inline; filename="proposal-${proposal.contentHash.slice(0, 12)}.pdf"`,
      "cache-control": "private, no-store",
    },
  });
}
