import { contentHash } from "#lib/hash/content-hash.ts";
import { certificateView } from "./certificate-view.ts";
import { crewSheetView } from "./crew-sheet-view.ts";
import type { DocumentView } from "./document-view.ts";
import { letterheadOf } from "./letterhead/letterhead.ts";
import type { Paper } from "./pdf/paper.ts";
import type { ProposalInput } from "./proposal/proposal-context.ts";
import { proposalView } from "./proposal-view.ts";
import { renderDocumentPdf } from "./render-document-pdf.ts";
import { retestSheetView } from "./retest-sheet-view.ts";

export interface JobDocument {
  kind: DocumentView["kind"];
  bytes: Uint8Array;
}

/**
 * Every document that applies to a job as PDF, each named by the hash of what it says: the proposal always, crew and
 * retest sheet where work is chosen, the certificate once a retest is in.
 */
export async function renderJobDocuments({
  paper = "letter",
  ...input
}: ProposalInput & { paper?: Paper }): Promise<JobDocument[]> {
  const { result } = input;
  const views = [
    proposalView(input),
    ...(result.scope.chosen === null ? [] : [crewSheetView(input), retestSheetView(input)]),
    ...(result.verified && result.promised ? [certificateView(input)] : []),
  ];
  const documents: JobDocument[] = [];
  for (const view of views)
    documents.push({
      kind: view.kind,
      bytes: await renderDocumentPdf(view, {
        paper,
        fingerprint: contentHash(view),
        letterhead: letterheadOf(input.contractor, view.kind),
      }),
    });
  return documents;
}
