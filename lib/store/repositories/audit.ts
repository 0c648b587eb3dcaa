import { toJson } from "../json.ts";
import type { UnitOfWork } from "../unit-of-work.ts";

export interface AuditRecord {
  action: string;
  subjectKind: string;
  subjectId: string;
  detail: unknown;
  /** Null when a homeowner acted. */
  actorId: string | null;
  organizationId: string;
  createdAt: Date;
}

export interface NewAuditRecord {
  action: string;
  subjectKind: string;
  subjectId: string;
  detail?: object;
  /** The other side that may read it too, when a claim is concerned: of a contractor's act the program, and the other way round. */
  programOrganizationId?: string;
}

const HIGHEST_COUNT = 500;

export function audit({ sql, identity }: UnitOfWork) {
  const { organizationId, actorId } = identity;
  return {
    async record({ detail = {}, ...rest }: NewAuditRecord): Promise<void> {
      // createMany asks nothing back, for who may add to the log need not be able to read it.
      await sql.auditLog.createMany({ data: [{ organizationId, actorId, detail: toJson(detail), ...rest }] });
    },

    /** What happened, newest first: all of it, or to one subject. */
    async list(subject?: { subjectKind: string; subjectId: string }): Promise<AuditRecord[]> {
      return await sql.auditLog.findMany({
        where: subject ?? {},
        omit: { id: true, programOrganizationId: true },
        orderBy: { id: "desc" },
        take: HIGHEST_COUNT,
      });
    },
  };
}
