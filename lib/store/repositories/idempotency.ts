import { InputProblem } from "#lib/errors/input-problem.ts";
import { toJson } from "../json.ts";
import type { UnitOfWork } from "../unit-of-work.ts";

export interface KeptAnswer {
  status: number;
  body: unknown;
}

/** Stands as the status while the first request is still being worked on. */
const AT_WORK = 0;
/** After so long without an answer the first request is taken for lost, and a repetition may do the work. */
const LOST_AFTER_MS = 5 * 60_000;

/** Answers kept by the key that the caller chose, so that a repeated request does its work once. */
export function idempotency({ sql, identity }: UnitOfWork) {
  const { organizationId } = identity;
  const whereOf = (key: string) => ({ organizationId_key: { organizationId, key } });
  return {
    /**
     * Takes the key for this request; null: go ahead. Otherwise the answer that the same request got before.
     * @throws InputProblem `repeat-differs` for another request, `conflict` while the first one is at work.
     */
    async begin(key: string, requestHash: string): Promise<KeptAnswer | null> {
      const fresh = { organizationId, key, requestHash, responseStatus: AT_WORK, responseBody: {} };
      const { count } = await sql.idempotencyKey.createMany({ data: [fresh], skipDuplicates: true });
      if (count === 1) return null;
      const row = await sql.idempotencyKey.findUnique({ where: whereOf(key) });
      if (!row) throw new InputProblem("conflict", [], "The first request with this key just ended. Send it again.");
      if (row.requestHash !== requestHash)
        throw new InputProblem("repeat-differs", [], `The key ${key} belongs to a request with other content.`);
      if (row.responseStatus !== AT_WORK) return { status: row.responseStatus, body: row.responseBody };
      const taken = await sql.idempotencyKey.updateMany({
        where: {
          organizationId,
          key,
          responseStatus: AT_WORK,
          createdAt: { lt: new Date(Date.now() - LOST_AFTER_MS) },
        },
        data: { createdAt: new Date() },
      });
      if (taken.count === 1) return null;
      throw new InputProblem("conflict", [], "The first request with this key is still at work. Wait, then repeat it.");
    },

    async keep(key: string, { status, body }: KeptAnswer): Promise<void> {
      const data = { responseStatus: status, responseBody: toJson(body as object) };
      await sql.idempotencyKey.update({ where: whereOf(key), data });
    },

    /** The request failed and did nothing: the same key may be used again. */
    async release(key: string): Promise<void> {
      await sql.idempotencyKey.deleteMany({ where: { organizationId, key, responseStatus: AT_WORK } });
    },
  };
}
