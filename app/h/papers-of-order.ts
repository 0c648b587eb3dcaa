import type { RelatedPapers } from "#lib/documents/html/related-papers.tsx";
import type { ProposalEventRecord, ProposalState } from "#lib/job/proposal-state.ts";
import type { ProposalRecord } from "#lib/store/repositories/proposals.ts";

/** A paper as a link's holder may see it, and what came after it. */
export interface SeenPaper {
  proposal: ProposalRecord;
  state: ProposalState;
  events: readonly ProposalEventRecord[];
  newerId: string | undefined;
  accepted: ProposalEventRecord | undefined;
}

/** A paper is changed a few times at most; a longer chain is followed no further. */
const MOST_STEPS = 30;

/**
 * The papers that belong to the order of a link: the newest one that came after it, and for a change order the accepted
 * one before it. `look` shows one paper and what took its place, and nothing else.
 */
export async function papersOfOrder(look: (proposalId: string) => Promise<SeenPaper>, own: SeenPaper) {
  let newest = own;
  for (let step = 0; step < MOST_STEPS && newest.newerId; step += 1) newest = await look(newest.newerId);

  let earlier: SeenPaper | undefined;
  let before = own.proposal.supersedesId;
  for (let step = 0; step < MOST_STEPS && before && !earlier; step += 1) {
    const paper = await look(before);
    if (paper.accepted) earlier = paper;
    before = paper.proposal.supersedesId;
  }
  return {
    ...(newest === own ? {} : { newer: newest }),
    ...(earlier ? { earlier } : {}),
  };
}

/** The paper that a link's page was asked to show in its place: `newer` or `earlier`. */
export function otherPaper({ newer, earlier }: Awaited<ReturnType<typeof papersOfOrder>>, of: string | null) {
  if (of === "newer") return newer;
  return of === "earlier" ? earlier : undefined;
}

/** What the page says of them. */
export function relatedPapers({ newer, earlier }: Awaited<ReturnType<typeof papersOfOrder>>): RelatedPapers {
  const day = (date: Date) => date.toISOString().slice(0, 10);
  return {
    ...(newer
      ? {
          newer: {
            issuedOn: day(newer.proposal.issuedAt),
            fingerprint: newer.proposal.contentHash,
            isAccepted: !!newer.accepted,
          },
        }
      : {}),
    ...(earlier
      ? { earlier: { acceptedOn: day(earlier.accepted!.createdAt), fingerprint: earlier.proposal.contentHash } }
      : {}),
  };
}
