import { randomUUID } from "node:crypto";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { toJson } from "../json.ts";
import { requireId } from "../not-found.ts";
import type { UnitOfWork } from "../unit-of-work.ts";

export interface InspectionSampleRecord {
  id: string;
  programId: string;
  seed: number;
  document: unknown;
  authorId: string;
  createdAt: Date;
}

/** One claim that may be drawn, with what its group is made of. */
export interface SampleRow {
  id: string;
  reference: string;
  organizationId: string;
  flagCount: number;
}

export function inspectionSamples({ sql, identity }: UnitOfWork) {
  const { organizationId, actorId } = identity;
  return {
    /** The claims of a program that stand: neither declined nor taken back. */
    async population(programId: string): Promise<SampleRow[]> {
      return await sql.claim.findMany({
        where: {
          programId: requireId(programId, "program"),
          programOrganizationId: organizationId,
          state: { notIn: ["draft", "declined", "withdrawn"] },
        },
        select: { id: true, reference: true, organizationId: true, flagCount: true },
      });
    },

    async save({ programId, seed, document }: { programId: string; seed: number; document: object }): Promise<void> {
      if (actorId === null) throw new InputProblem("not-allowed", [], "A sample is drawn by a member of the program");
      await sql.inspectionSample.create({
        data: { id: randomUUID(), organizationId, programId, seed, document: toJson(document), authorId: actorId },
      });
    },

    /** Samples drawn so far, the newest first. */
    async list(programId: string): Promise<InspectionSampleRecord[]> {
      return await sql.inspectionSample.findMany({
        where: { programId: requireId(programId, "program") },
        omit: { organizationId: true },
        orderBy: { createdAt: "desc" },
        take: 20,
      });
    },
  };
}
