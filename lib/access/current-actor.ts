import type { Identity } from "#lib/store/identity.ts";
import type { Store } from "#lib/store/open-store.ts";
import type { HomeownerActor, MemberActor } from "./actor.ts";
import { DEMO_IDENTITIES, type DemoIdentityId } from "./demo-identities.ts";

/** The cookie that says as whom the visitor wants to act. It grants nothing that loopback does not grant already. */
export const IDENTITY_COOKIE = "ductmend-identity";

export function isDemoIdentityId(value: string | undefined): value is DemoIdentityId {
  return value !== undefined && Object.hasOwn(DEMO_IDENTITIES, value);
}

/**
 * Who acts in the app: the demo identity that the cookie names, else the demo owner. There is no sign-in yet, and the
 * server listens on loopback only; accounts will answer here, and nothing else has to change.
 */
export function currentActor(cookieValue?: string): MemberActor {
  return DEMO_IDENTITIES[isDemoIdentityId(cookieValue) ? cookieValue : "owner"];
}

/** The homeowner whom a link leads to; undefined when no such link was ever given out. */
export async function homeownerByLink(store: Store, linkToken: string): Promise<HomeownerActor | undefined> {
  const identity: Identity | undefined = await store.resolveProposalLink(linkToken);
  if (!identity?.proposalId) return undefined;
  return { kind: "homeowner", actorId: null, organizationId: identity.organizationId, proposalId: identity.proposalId };
}
