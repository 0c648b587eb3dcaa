import type { Identity } from "#lib/store/identity.ts";
import type { MemberRole, OrganizationKind } from "#lib/store/repositories/organizations.ts";

/** A member of an organization at work. */
export interface MemberActor extends Identity {
  kind: "member";
  actorId: string;
  name: string;
  role: MemberRole;
  organizationKind: OrganizationKind;
  organizationName: string;
}

/** Somebody who came by a proposal's link: no account, and nothing in sight but that proposal. */
export interface HomeownerActor extends Identity {
  kind: "homeowner";
  actorId: null;
  proposalId: string;
}

/** Who acts. It goes as it is into `store.withOrganization`, so that what may be seen follows from who asks. */
export type Actor = MemberActor | HomeownerActor;
