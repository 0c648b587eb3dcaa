import { z } from "zod";
import type { DocumentView } from "./document-view.ts";
import { type Letterhead, letterheadOf } from "./letterhead/letterhead.ts";
import type { Paper } from "./pdf/paper.ts";
import type { ProposalInput } from "./proposal/proposal-context.ts";
import { proposalView } from "./proposal-view.ts";

export const ISSUED_PROPOSAL_VERSION = "ductmend.issued-proposal/1";

/** What is kept of an issued proposal: every word and number, in both languages, as the homeowner sees them. */
export interface IssuedProposal {
  schemaVersion: typeof ISSUED_PROPOSAL_VERSION;
  paper: Paper;
  /** The head of the firm as it was on that day. */
  letterhead?: Letterhead;
  languages: { en: DocumentView; es: DocumentView };
}

export function issueProposal({
  paper = "letter",
  ...input
}: Omit<ProposalInput, "language"> & { paper?: Paper }): IssuedProposal {
  const letterhead = letterheadOf(input.contractor, "proposal");
  return {
    schemaVersion: ISSUED_PROPOSAL_VERSION,
    paper,
    ...(letterhead ? { letterhead } : {}),
    languages: { en: proposalView({ ...input, language: "en" }), es: proposalView({ ...input, language: "es" }) },
  };
}

const issuedSchema = z.object({
  schemaVersion: z.literal(ISSUED_PROPOSAL_VERSION),
  paper: z.enum(["letter", "a4"]),
  languages: z.object({ en: z.looseObject({ kind: z.literal("proposal") }), es: z.looseObject({}) }),
});

/**
 * The kept proposal as it was issued. The store gives back what `issueProposal` made, held to its hash, so only the
 * frame is looked at. @throws Error when it is of a form that this version does not know.
 */
export function readIssuedProposal(kept: unknown): IssuedProposal {
  if (!issuedSchema.safeParse(kept).success)
    throw new Error("The kept proposal has a form that this version does not know");
  return kept as IssuedProposal;
}
