import { randomBytes, randomUUID } from "node:crypto";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { textHash } from "#lib/hash/sha256.ts";
import { notFound, requireId } from "../not-found.ts";
import type { UnitOfWork } from "../unit-of-work.ts";

export interface ApiKeyRecord {
  id: string;
  name: string;
  scopes: string[];
  createdById: string;
  createdAt: Date;
  lastUsedAt: Date | null;
  revokedAt: Date | null;
}

/** 256 random bits: nobody guesses them, so a plain SHA-256 keeps them. */
const KEY_BYTES = 32;
const KEY_START = "ductmend_";
const FRESH_USE_MS = 60_000;

export function apiKeys({ sql, identity }: UnitOfWork) {
  const { organizationId, actorId } = identity;
  return {
    async list(): Promise<ApiKeyRecord[]> {
      return await sql.apiKey.findMany({
        omit: { organizationId: true, keyHash: true },
        orderBy: [{ createdAt: "desc" }, { id: "asc" }],
      });
    },

    /** Makes a key. It is given out here once; only its hash is kept. */
    async create({ name, scopes }: { name: string; scopes: readonly string[] }): Promise<{ id: string; key: string }> {
      if (actorId === null) throw new InputProblem("not-allowed", [], "A key is made by a member of the organization");
      const id = randomUUID();
      const key = `${KEY_START}${randomBytes(KEY_BYTES).toString("base64url")}`;
      await sql.apiKey.create({
        data: { id, organizationId, name, scopes: [...scopes], createdById: actorId, keyHash: textHash(key) },
      });
      return { id, key };
    },

    /** From here on the key opens nothing. */
    async revoke(id: string): Promise<void> {
      const where = { id: requireId(id, "key"), revokedAt: null };
      const { count } = await sql.apiKey.updateMany({ where, data: { revokedAt: new Date() } });
      if (count === 0) throw notFound("key");
    },

    /** Notes that a key was used, once a minute at most. */
    async noteUse(id: string): Promise<void> {
      const stale = { OR: [{ lastUsedAt: null }, { lastUsedAt: { lt: new Date(Date.now() - FRESH_USE_MS) } }] };
      await sql.apiKey.updateMany({ where: { id, ...stale }, data: { lastUsedAt: new Date() } });
    },
  };
}
