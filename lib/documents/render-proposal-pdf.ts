import { contentHash } from "#lib/hash/content-hash.ts";
import { letterheadOf } from "./letterhead/letterhead.ts";
import type { Paper } from "./pdf/paper.ts";
import type { ProposalInput } from "./proposal/proposal-context.ts";
import { proposalView } from "./proposal-view.ts";
import { renderDocumentPdf } from "./render-document-pdf.ts";

/** The proposal of a job as a PDF file, named by the hash of what it says. */
export async function renderProposalPdf({
  paper = "letter",
  ...input
}: ProposalInput & { paper?: Paper }): Promise<Uint8Array> {
  const view = proposalView(input);
  return await renderDocumentPdf(view, {
    paper,
    fingerprint: contentHash(view),
    letterhead: letterheadOf(input.contractor, "proposal"),
  });
}
