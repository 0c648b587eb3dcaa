import { DEMO_IDENTITIES } from "#lib/access/demo-identities.ts";
import { DEMO_PROGRAM_ID } from "#lib/access/seed-demo.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import type { Store } from "#lib/store/open-store.ts";
import { claimReference, completionDate, draftClaim, submitClaim } from "./submit-claim.ts";

const EXAMPLE = "mixed-crawlspace-retest";
const TURN = "seed-claim";

/** Hands in the claim of the example with a retest, once, so that the invented program has something to look at. */
export async function seedDemoClaim(store: Store, draws?: number): Promise<void> {
  const { estimator } = DEMO_IDENTITIES;
  const draft = await store.withOrganization(estimator, async (scope) => {
    await scope.takeTurn(TURN);
    const job = await scope.jobs.findByExample(EXAMPLE);
    if (!job || (await scope.claims.list({ jobId: job.id, limit: 1 })).items.length > 0) return undefined;
    const { revision } = await scope.jobs.findCurrent(job.id);
    const program = (await scope.programs.list()).find(({ id }) => id === DEMO_PROGRAM_ID);
    if (!revision || !program) return undefined;
    const document = parseJob(revision.document);
    const claimedOn = completionDate(document, "2026-11-20");
    return {
      jobId: job.id,
      reference: claimReference(document.id, revision.revision),
      draft: await draftClaim(scope, { job: document, program, claimedBy: estimator.name, claimedOn, draws }),
    };
  });
  if (!draft) return;
  await submitClaim(store, estimator, draft).catch((thrown: unknown) => {
    // Another start at the same moment was first.
    if (!(thrown instanceof InputProblem && thrown.code === "conflict")) throw thrown;
  });
}
