import { recomputeClaim } from "#lib/claims/recompute-claim.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { estimateJob, listMethods, recomputePacket, runOneMethod } from "#lib/exchange/api/operations/calculation.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { METHODS } from "#lib/methods/catalogue.ts";
import { methodResultDocument, runMethod } from "#lib/methods/run-method.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import { createHighsSolver } from "../../highs-solver.ts";
import { type Served, served } from "../served.ts";

/** What is calculated and not stored. */
export const CALCULATION: readonly Served[] = [
  served(listMethods, async () => ({
    items: METHODS.map(({ id, title, sources }) => ({ id, title, sources: [...sources] })),
  })),

  served(runOneMethod, async (_context, { path, body }) => ({
    ...methodResultDocument(runMethod(path.methodId ?? "", body)),
  })),

  served(estimateJob, async (_context, { body: { job: document, draws = 0, seed = 1 } }) => {
    const job = parseJob(document);
    const [reference, solve] = await Promise.all([loadReferenceData(job), createHighsSolver()]);
    return await estimate(job, reference, { solve, draws, seed });
  }),

  served(recomputePacket, async (_context, { body: { claim, withDraws = true } }) =>
    recomputeClaim(claim, { loadReference: loadReferenceData, withDraws }),
  ),
];
