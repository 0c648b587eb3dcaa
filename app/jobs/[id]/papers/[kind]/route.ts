import type { NextRequest } from "next/server";
import { languageOf } from "#app/h/proposal-by-link.ts";
import { contractorOf } from "#app/organization/contractor-of.ts";
import { certificateView } from "#lib/documents/certificate-view.ts";
import { crewSheetView } from "#lib/documents/crew-sheet-view.ts";
import type { DocumentView } from "#lib/documents/document-view.ts";
import { letterheadOf } from "#lib/documents/letterhead/letterhead.ts";
import type { ProposalInput } from "#lib/documents/proposal/proposal-context.ts";
import { renderDocumentPdf } from "#lib/documents/render-document-pdf.ts";
import { retestSheetView } from "#lib/documents/retest-sheet-view.ts";
import { contentHash } from "#lib/hash/content-hash.ts";
import { computeResult } from "../../../compute-result.ts";
import { showAs } from "../../../session.ts";
import { showJob } from "../../../show-job.ts";

const VIEWS: Readonly<Record<string, (input: ProposalInput) => DocumentView>> = {
  "crew-sheet": crewSheetView,
  "retest-sheet": retestSheetView,
  certificate: certificateView,
};

/** A paper for the crew or after the work, as the job is now. What was issued to the homeowner has its own link. */
export async function GET(
  request: NextRequest,
  { params }: { params: Promise<{ id: string; kind: string }> },
): Promise<Response> {
  const { id, kind } = await params;
  const viewOf = Object.hasOwn(VIEWS, kind) ? VIEWS[kind] : undefined;
  const { job } = await showJob(id);
  const result = await computeResult(job);
  const hasPaper = kind === "certificate" ? result.verified && result.promised : result.scope.chosen !== null;
  if (!viewOf || !hasPaper) return new Response("This job has no such paper yet.", { status: 404 });
  const contractor = contractorOf(await showAs("job.view", ({ organizations }) => organizations.own()));
  const query = request.nextUrl.searchParams;
  const view = viewOf({
    job,
    result,
    contractor,
    language: languageOf(query.get("lang")),
    isoDate: new Date().toLocaleDateString("en-CA"),
  });
  const bytes = await renderDocumentPdf(view, {
    paper: query.get("paper") === "a4" ? "a4" : "letter",
    fingerprint: contentHash(view),
    letterhead: letterheadOf(contractor, view.kind),
  });
  return new Response(new Uint8Array(bytes), {
    headers: {
      "content-type": "application/pdf",
      "content-disposition": `inline; filename="${job.id}-${kind}.pdf"`,
      "cache-control": "private, no-store",
    },
  });
}
