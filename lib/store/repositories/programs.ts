import { contentHash } from "#lib/hash/content-hash.ts";
import { toJson } from "../json.ts";
import { notFound, requireId } from "../not-found.ts";
import type { UnitOfWork } from "../unit-of-work.ts";

export interface ProgramRecord {
  id: string;
  /** Of the organization that runs the program. */
  organizationId: string;
  name: string;
  description: string;
}

/** A later edition of a rule, with what it is called where the contractor reads of it. */
export interface RuleEdition extends ProgramRuleRecord {
  programName: string;
  /** The edition before it. */
  previous: ProgramRuleRecord;
}

/** What the record calls it when a contractor has read of a new edition. */
export const RULE_SEEN = { action: "program.rule-seen", subjectKind: "program-rule" } as const;

/** A rule in force from a date until the next one. */
export interface ProgramRuleRecord {
  id: string;
  programId: string;
  effectiveOn: Date;
  document: unknown;
  contentHash: string;
}

export function programs({ sql, identity }: UnitOfWork) {
  const { organizationId } = identity;
  const fields = { id: true, organizationId: true, name: true, description: true } as const;
  return {
    /** The programs that this organization runs or is invited to. */
    async list(): Promise<ProgramRecord[]> {
      return await sql.program.findMany({ select: fields, orderBy: { name: "asc" } });
    },

    async ensure({ id, name, description }: Omit<ProgramRecord, "organizationId">): Promise<void> {
      const update = { name, description };
      await sql.program.upsert({ where: { id }, create: { id, organizationId, ...update }, update });
    },

    async invite(programId: string, contractorId: string): Promise<void> {
      await sql.programContractor.upsert({
        where: { programId_organizationId: { programId, organizationId: contractorId } },
        create: { programId, organizationId: contractorId, programOrganizationId: organizationId, state: "active" },
        update: {},
      });
    },

    /** The contractors that a program knows. */
    async contractorIds(programId: string): Promise<string[]> {
      const rows = await sql.programContractor.findMany({
        where: { programId: requireId(programId, "program"), programOrganizationId: organizationId },
        select: { organizationId: true },
      });
      return rows.map((row) => row.organizationId);
    },

    async addRule(rule: { id: string; programId: string; effectiveOn: Date; document: object }): Promise<void> {
      const document = toJson(rule.document);
      await sql.programRule.create({
        data: { ...rule, organizationId, document, contentHash: contentHash(rule.document) },
      });
    },

    /** All rules of a program, the newest first. */
    async rules(programId: string): Promise<ProgramRuleRecord[]> {
      return await sql.programRule.findMany({
        where: { programId: requireId(programId, "program") },
        omit: { organizationId: true, createdAt: true },
        orderBy: [{ effectiveOn: "desc" }, { createdAt: "desc" }],
      });
    },

    /** Editions that came after this contractor was invited, the newest first, each with whether somebody marked it as seen. */
    async laterEditions(): Promise<(RuleEdition & { isSeen: boolean })[]> {
      const invitations = await sql.programContractor.findMany({
        where: { organizationId },
        select: { programId: true, createdAt: true, program: { select: { name: true } } },
      });
      const rules = await sql.programRule.findMany({
        where: { programId: { in: invitations.map(({ programId }) => programId) } },
        omit: { organizationId: true },
        orderBy: [{ effectiveOn: "desc" }, { createdAt: "desc" }],
      });
      const seen = await sql.auditLog.findMany({
        where: { organizationId, ...RULE_SEEN, subjectId: { in: rules.map(({ id }) => id) } },
        select: { subjectId: true },
      });
      return rules.flatMap(({ createdAt, ...rule }, at) => {
        const invited = invitations.find(({ programId }) => programId === rule.programId);
        const previous = rules.slice(at + 1).find(({ programId }) => programId === rule.programId);
        if (!invited || !previous || !(createdAt > invited.createdAt)) return [];
        const isSeen = seen.some(({ subjectId }) => subjectId === rule.id);
        return [{ ...rule, programName: invited.program.name, previous, isSeen }];
      });
    },

    /** The rule in force on a date. */
    async ruleOn(programId: string, date: Date): Promise<ProgramRuleRecord> {
      const row = await sql.programRule.findFirst({
        where: { programId: requireId(programId, "program"), effectiveOn: { lte: date } },
        omit: { organizationId: true, createdAt: true },
        orderBy: [{ effectiveOn: "desc" }, { createdAt: "desc" }],
      });
      if (!row) throw notFound("rule for this date");
      return row;
    },
  };
}
