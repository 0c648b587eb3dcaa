import { InputProblem } from "#lib/errors/input-problem.ts";
import { contentHash } from "#lib/hash/content-hash.ts";
import { type PriceBook, priceBookSchema } from "#lib/job/price-book-schema.ts";
import { toJson } from "../json.ts";
import { notFound } from "../not-found.ts";
import type { UnitOfWork } from "../unit-of-work.ts";

/** The prices of an organization as they were from one day on; never changed again. */
export interface PriceBookRecord {
  version: number;
  effectiveOn: Date;
  book: PriceBook;
  contentHash: string;
  authorId: string;
  createdAt: Date;
}

export interface NewPriceBook {
  /** The version that the change was made on, 0 for the first; another one saved meanwhile is a conflict. */
  onVersion: number;
  effectiveOn: Date;
  /** Its id and version id are given here. */
  book: Omit<PriceBook, "id" | "versionId">;
}

const DAY_DIGITS = 10;

export function priceBooks({ sql, identity }: UnitOfWork) {
  const { organizationId, actorId } = identity;

  function toRecord(row: {
    version: number;
    effectiveOn: Date;
    document: unknown;
    contentHash: string;
    authorId: string;
    createdAt: Date;
  }): PriceBookRecord {
    const { document, ...rest } = row;
    return { ...rest, book: priceBookSchema.parse(document) };
  }

  const newestFirst = { orderBy: { version: "desc" }, omit: { organizationId: true } } as const;

  return {
    /** The book in force on a day: the newest of those whose day has come. */
    async inForceOn(date: Date): Promise<PriceBookRecord | undefined> {
      const row = await sql.priceBookVersion.findFirst({ where: { effectiveOn: { lte: date } }, ...newestFirst });
      return row ? toRecord(row) : undefined;
    },

    /** Every version, newest first. */
    async list(): Promise<PriceBookRecord[]> {
      return (await sql.priceBookVersion.findMany(newestFirst)).map(toRecord);
    },

    async find(version: number): Promise<PriceBookRecord> {
      const where = { organizationId_version: { organizationId, version } };
      const row = await sql.priceBookVersion.findUnique({ where, omit: { organizationId: true } });
      if (!row) throw notFound("version of the price book");
      return toRecord(row);
    },

    /** Appends a version. @throws InputProblem `conflict` when somebody saved one since `onVersion`. */
    async add({ onVersion, effectiveOn, book }: NewPriceBook): Promise<PriceBookRecord> {
      if (actorId === null)
        throw new InputProblem("not-allowed", [], "Prices are changed by a member of the organization");
      // Two who save at once take turns, so that the second meets the first one's version here.
      await sql.$queryRaw`SELECT pg_advisory_xact_lock(hashtext(${`price-book ${organizationId}`}))::text`;
      const newest = await sql.priceBookVersion.findFirst({
        orderBy: newestFirst.orderBy,
        select: { version: true },
      });
      if ((newest?.version ?? 0) !== onVersion) {
        throw new InputProblem(
          "conflict",
          [],
          `Somebody changed the prices meanwhile: version ${newest?.version ?? 0} is there, and yours was made on ${onVersion}. Load them again, then repeat your change.`,
        );
      }
      const version = onVersion + 1;
      const document = priceBookSchema.parse({
        ...book,
        id: `prices-${organizationId.slice(0, 8)}`,
        versionId: String(version),
        issuedOn: effectiveOn.toISOString().slice(0, DAY_DIGITS),
      });
      const row = await sql.priceBookVersion.create({
        data: {
          organizationId,
          version,
          effectiveOn,
          document: toJson(document),
          contentHash: contentHash(document),
          authorId: actorId,
        },
        omit: { organizationId: true },
      });
      return toRecord(row);
    },
  };
}
