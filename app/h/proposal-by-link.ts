import { can } from "#lib/access/can.ts";
import { homeownerByLink } from "#lib/access/current-actor.ts";
import type { Language } from "#lib/pictures/scene.ts";
import type { Identity } from "#lib/store/identity.ts";
import { sharedStore } from "#lib/store/shared-store.ts";
import { papersOfOrder } from "./papers-of-order.ts";

/** Opens what a link leads to, inside one unit of work; undefined when no such link was ever given out. */
export async function proposalByLink(token: string) {
  const store = await sharedStore();
  const actor = await homeownerByLink(store, token);
  if (!actor || !can(actor, "proposal.view", { proposalId: actor.proposalId })) return undefined;
  const { proposalId } = actor;
  const identity: Identity = { organizationId: actor.organizationId, actorId: null, proposalId };
  const now = new Date();
  return {
    actor,
    /** The other papers of the same order. */
    papersOfOrder: () =>
      papersOfOrder(
        (id) =>
          store.withOrganization({ ...identity, proposalId: id }, async ({ proposals }) => ({
            proposal: await proposals.find(id),
            state: await proposals.stateOf(id, now),
            newerId: await proposals.newerId(id),
            accepted: (await proposals.events(id)).find(({ kind }) => kind === "accepted"),
          })),
        proposalId,
      ),
    read: () =>
      store.withOrganization(identity, async ({ proposals }) => ({
        proposal: await proposals.find(proposalId),
        state: await proposals.stateOf(proposalId, now),
        events: await proposals.events(proposalId),
      })),
    record: (kind: "seen" | "asked" | "accepted", payload: object = {}) =>
      store.withOrganization(identity, ({ proposals }) => proposals.recordEvent(proposalId, kind, payload)),
  };
}

/** The language asked for; English when none is. */
export function languageOf(value: unknown): Language {
  return value === "es" ? "es" : "en";
}
