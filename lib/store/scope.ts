import { apiKeys } from "./repositories/api-keys.ts";
import { audit } from "./repositories/audit.ts";
import { claimBatches } from "./repositories/claim-batches.ts";
import { claimChunks } from "./repositories/claim-chunks.ts";
import { claimReview } from "./repositories/claim-review.ts";
import { claims } from "./repositories/claims.ts";
import { clients } from "./repositories/clients.ts";
import { idempotency } from "./repositories/idempotency.ts";
import { inspectionSamples } from "./repositories/inspection-samples.ts";
import { instruments } from "./repositories/instruments.ts";
import { jobs } from "./repositories/jobs.ts";
import { organizations } from "./repositories/organizations.ts";
import { photos } from "./repositories/photos.ts";
import { priceBooks } from "./repositories/price-books.ts";
import { programs } from "./repositories/programs.ts";
import { proposals } from "./repositories/proposals.ts";
import { recomputeChunks } from "./repositories/recompute-chunks.ts";
import { repairs } from "./repositories/repairs.ts";
import type { UnitOfWork } from "./unit-of-work.ts";

/** All that one unit of work can reach, inside one organization and one transaction. */
export function makeScope(unit: UnitOfWork) {
  return {
    organizations: organizations(unit),
    clients: clients(unit),
    jobs: jobs(unit),
    instruments: instruments(unit),
    photos: photos(unit),
    proposals: proposals(unit),
    priceBooks: priceBooks(unit),
    repairs: repairs(unit),
    programs: programs(unit),
    inspectionSamples: inspectionSamples(unit),
    claims: claims(unit),
    claimReview: claimReview(unit),
    claimBatches: claimBatches(unit),
    claimChunks: claimChunks(unit),
    recomputeChunks: recomputeChunks(unit),
    apiKeys: apiKeys(unit),
    idempotency: idempotency(unit),
    audit: audit(unit),

    /** Waits until no other unit of work, of any process, has this turn; it ends with the transaction. */
    async takeTurn(name: string): Promise<void> {
      await unit.sql.$queryRaw`SELECT pg_advisory_xact_lock(hashtext(${name}))::text`;
    },
  };
}

export type Scope = ReturnType<typeof makeScope>;
