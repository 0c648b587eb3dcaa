import { notFound } from "../not-found.ts";
import type { UnitOfWork } from "../unit-of-work.ts";

export type OrganizationKind = "contractor" | "program";
export type MemberRole = "owner" | "estimator" | "crew" | "reviewer";

export interface OrganizationRecord {
  id: string;
  kind: OrganizationKind;
  name: string;
  isDemo: boolean;
  branding: unknown;
}

export interface MemberRecord {
  id: string;
  organizationId: string;
  name: string;
  role: MemberRole;
}

export interface NewOrganization {
  kind: OrganizationKind;
  name: string;
  isDemo: boolean;
  branding?: object;
  members: readonly { id: string; name: string; role: MemberRole }[];
}

const FIELDS = { id: true, kind: true, name: true, isDemo: true, branding: true } as const;

export function organizations({ sql, identity }: UnitOfWork) {
  const id = identity.organizationId;
  return {
    /** The organization that this unit of work acts for. */
    async own(): Promise<OrganizationRecord> {
      const row = await sql.organization.findUnique({ where: { id }, select: FIELDS });
      if (!row) throw notFound("organization");
      return row;
    },

    /** Those it shares a program with. */
    async partners(): Promise<OrganizationRecord[]> {
      return await sql.organization.findMany({ where: { id: { not: id } }, select: FIELDS, orderBy: { name: "asc" } });
    },

    async members(): Promise<MemberRecord[]> {
      return await sql.member.findMany({
        select: { id: true, organizationId: true, name: true, role: true },
        orderBy: { name: "asc" },
      });
    },

    /** Makes the organization and its members, or brings their names and roles up to date. */
    async ensure({ kind, name, isDemo, branding = {}, members }: NewOrganization): Promise<void> {
      await sql.organization.upsert({ where: { id }, create: { id, kind, name, isDemo, branding }, update: { name } });
      for (const member of members) {
        const { name, role } = member;
        await sql.member.upsert({
          where: { id: member.id },
          create: { id: member.id, organizationId: id, name, role },
          update: { name, role },
        });
      }
    },

    async setBranding(branding: object): Promise<void> {
      await sql.organization.update({ where: { id }, data: { branding } });
    },
  };
}
