import type { OrganizationKind } from "#lib/store/repositories/organizations.ts";
import type { MemberActor } from "./actor.ts";

/** Invented organizations. Their ids are fixed, so that a demo can be made again and is found again. */
export const DEMO_ORGANIZATIONS = {
  contractor: organization("d0000001", "contractor", "Tarn Hill Duct Sealing (invented)"),
  otherContractor: organization("d0000002", "contractor", "Osprey Bend Home Comfort (invented)"),
  program: organization("d0000003", "program", "Three Rivers Efficiency Program (invented)"),
} as const;

/** The people one can be until there is a sign-in, by the name that the cookie carries. The first one acts by default. */
export const DEMO_IDENTITIES = {
  owner: member(DEMO_ORGANIZATIONS.contractor, "01", "Marit Lindqvist", "owner"),
  estimator: member(DEMO_ORGANIZATIONS.contractor, "02", "Joel Abara", "estimator"),
  crew: member(DEMO_ORGANIZATIONS.contractor, "03", "Sunniva Holt", "crew"),
  "other-estimator": member(DEMO_ORGANIZATIONS.otherContractor, "04", "Casper Dunmore", "estimator"),
  reviewer: member(DEMO_ORGANIZATIONS.program, "05", "Ines Calloway", "reviewer"),
} as const satisfies Record<string, MemberActor>;

export type DemoIdentityId = keyof typeof DEMO_IDENTITIES;

/** Saves the example jobs; nobody can act as it. A job whose newest revision is of another author was changed by people. */
export const EXAMPLE_AUTHOR_ID = "d0000001-0000-4000-8000-0000000000ff";

interface DemoOrganization {
  id: string;
  kind: OrganizationKind;
  name: string;
}

function organization(digits: string, kind: OrganizationKind, name: string): DemoOrganization {
  return { id: `${digits}-0000-4000-8000-000000000000`, kind, name };
}

function member(of: DemoOrganization, digits: string, name: string, role: MemberActor["role"]): MemberActor {
  return {
    kind: "member",
    organizationId: of.id,
    organizationKind: of.kind,
    organizationName: of.name,
    actorId: `${of.id.slice(0, 8)}-0000-4000-8000-0000000000${digits}`,
    name,
    role,
  };
}
