import type { MemberActor } from "#lib/access/actor.ts";
import { requireAllowed } from "#lib/access/can.ts";
import { type ClaimSide, type ClaimState, nextStates } from "#lib/claims/claim-state.ts";
import { refuse } from "#lib/errors/input-problem.ts";
import type { Store } from "#lib/store/open-store.ts";
import type { ClaimSummary } from "#lib/store/repositories/claims.ts";

const LONGEST_TEXT = 4000;

export function sideOf(actor: MemberActor, claim: Pick<ClaimSummary, "programOrganizationId">): ClaimSide {
  return actor.organizationId === claim.programOrganizationId ? "program" : "contractor";
}

function words(text: string, field: string, label: string): string {
  const plain = text.trim().slice(0, LONGEST_TEXT);
  if (plain === "") refuse({ field, detail: `${label} is empty`, fix: `Enter ${label.toLowerCase()} in a few words.` });
  return plain;
}

/** The organization on the other side of a claim, which reads the same record. */
function otherSide(actor: MemberActor, claim: Pick<ClaimSummary, "organizationId" | "programOrganizationId">): string {
  return sideOf(actor, claim) === "program" ? claim.organizationId : claim.programOrganizationId;
}

/** Takes a claim a step further with a reason, and records it. @throws InputProblem when this side may not go there. */
export async function decideClaim(
  store: Store,
  actor: MemberActor,
  { id, from, to, reason }: { id: string; from: ClaimState; to: ClaimState; reason: string },
): Promise<void> {
  const why = words(reason, "reason", "A reason");
  await store.withOrganization(actor, async ({ claims, audit }) => {
    const claim = await claims.find(id);
    const side = sideOf(actor, claim);
    if (side === "program") requireAllowed(actor, "claim.decide", claim);
    else requireAllowed(actor, to === "withdrawn" ? "claim.withdraw" : "claim.comment", claim);
    if (!nextStates(from, side).includes(to))
      refuse({ field: "to", detail: `A claim does not go from ${from} to ${to} here`, fix: "Load it again." });
    await claims.decide({ id, from, to, reason: why });
    await audit.record({
      action: "claim.decided",
      subjectKind: "claim",
      subjectId: id,
      detail: { from, to, reason: why },
      programOrganizationId: otherSide(actor, claim),
    });
  });
}

/** Adds a comment that both sides read. */
export async function commentClaim(
  store: Store,
  actor: MemberActor,
  { id, text }: { id: string; text: string },
): Promise<void> {
  const plain = words(text, "text", "A comment");
  await store.withOrganization(actor, async ({ claims, claimReview, audit }) => {
    const claim = await claims.find(id);
    requireAllowed(actor, "claim.comment", claim);
    await claimReview.comment(id, plain);
    await audit.record({
      action: "claim.commented",
      subjectKind: "claim",
      subjectId: id,
      programOrganizationId: otherSide(actor, claim),
    });
  });
}
