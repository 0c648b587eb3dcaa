import { can } from "#lib/access/can.ts";
import { homeownerByLink } from "#lib/access/current-actor.ts";
import type { Language } from "#lib/pictures/scene.ts";
import type { Identity } from "#lib/store/identity.ts";
import { sharedStore } from "#lib/store/shared-store.ts";
import { papersOfOrder, type SeenPaper } from "./papers-of-order.ts";

/** Opens what a link leads to, inside one unit of work; undefined when no such link was ever given out. */
export async function proposalByLink(token: string) {
  const store = await sharedStore();
  const actor = await homeownerByLink(store, token);
  if (!actor || !can(actor, "proposal.view", { proposalId: actor.proposalId })) return undefined;
  const { proposalId } = actor;
  const identity: Identity = { organizationId: actor.organizationId, actorId: null, proposalId };
  const now = new Date();
  const look = (id: string): Promise<SeenPaper> =>
    store.withOrganization({ ...identity, proposalId: id }, async ({ proposals }) => {
      const events = await proposals.events(id);
      return {
        proposal: await proposals.find(id),
        state: await proposals.stateOf(id, now),
        events,
        newerId: await proposals.newerId(id),
        accepted: events.find(({ kind }) => kind === "accepted"),
      };
    });
  return {
    actor,
    read: () => look(proposalId),
    /** The other papers of the order of the link's own, which was read. */
    papersOfOrder: (own: SeenPaper) => papersOfOrder(look, own),
    record: (kind: "seen" | "asked" | "accepted", payload: object = {}) =>
      store.withOrganization(identity, ({ proposals }) => proposals.recordEvent(proposalId, kind, payload)),
  };
}

/** The language asked for; English when none is. */
export function languageOf(value: unknown): Language {
  return value === "es" ? "es" : "en";
}
