import type { NextRequest } from "next/server";
import { languageOf } from "#app/h/proposal-by-link.ts";
import { letterheadOf } from "#lib/documents/letterhead/letterhead.ts";
import { renderDocumentPdf } from "#lib/documents/render-document-pdf.ts";
import { contentHash } from "#lib/hash/content-hash.ts";
import { noSuchPaper, paperOfJob } from "../paper-of-job.ts";

/** A paper as PDF. What was issued to the homeowner has its own link. */
export async function GET(
  request: NextRequest,
  { params }: { params: Promise<{ id: string; kind: string }> },
): Promise<Response> {
  const { id, kind } = await params;
  const query = request.nextUrl.searchParams;
  const paper = await paperOfJob(id, kind, languageOf(query.get("lang")));
  if (!paper) return noSuchPaper();
  const bytes = await renderDocumentPdf(paper.shown, {
    paper: query.get("paper") === "a4" ? "a4" : "letter",
    fingerprint: contentHash(paper.view),
    letterhead: letterheadOf(paper.contractor, paper.view.kind),
  });
  return new Response(new Uint8Array(bytes), {
    headers: {
      "content-type": "application/pdf",
      "content-disposition": `inline; filename="${paper.job.id}-${kind}.pdf"`,
      "cache-control": "private, no-store",
    },
  });
}
