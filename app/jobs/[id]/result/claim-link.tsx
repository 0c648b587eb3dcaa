import { LinkButton } from "#app/design/button.tsx";
import { actAs } from "#app/jobs/session.ts";
import { CLAIM_STATE_WORDS } from "#app/program/claim-words.ts";
import { can } from "#lib/access/can.ts";
import { claimReference } from "#lib/work/claims/submit-claim.ts";

/** From a verified result to its claim: to be handed in, or where the one of these entries stands. */
export async function ClaimLink({
  jobId,
  entriesId,
  revision,
}: {
  jobId: string;
  entriesId: string;
  revision: number;
}) {
  const own = claimReference(entriesId, revision);
  const { maySubmit, claim } = await actAs("job.view", async (scope, actor) => ({
    maySubmit: can(actor, "claim.submit"),
    claim: can(actor, "claim.view")
      ? (await scope.claims.list({ jobId, reference: own })).items.find(({ reference }) => reference === own)
      : undefined,
  }));
  if (claim)
    return (
      <LinkButton href={`/program/claims/${claim.id}`} variant="secondary">
        Claim: {CLAIM_STATE_WORDS[claim.state].toLowerCase()}
      </LinkButton>
    );
  return maySubmit ? (
    <LinkButton href={`/jobs/${jobId}/claim`} variant="secondary">
      Hand in the claim
    </LinkButton>
  ) : null;
}
