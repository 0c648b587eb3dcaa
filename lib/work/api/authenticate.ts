import type { MemberActor } from "#lib/access/actor.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import type { ApiScope } from "#lib/exchange/api/api-scope.ts";
import type { Store } from "#lib/store/open-store.ts";

const BEARER = /^Bearer +(\S+)$/i;

/**
 * Who asks, by the key in the header `Authorization`. A key acts as the member who made it and may never do more.
 * @throws InputProblem `key-unknown` or `scope-missing`
 */
export async function authenticate(store: Store, header: string | null, scope: ApiScope): Promise<MemberActor> {
  const key = BEARER.exec(header ?? "")?.[1];
  const found = key === undefined ? undefined : await store.resolveApiKey(key);
  if (!found) throw new InputProblem("key-unknown", [], "Send a valid key as `Authorization: Bearer KEY`.");
  const { apiKeyId, scopes, organizationId, actorId } = found;
  const actor = await store.withOrganization({ organizationId, actorId }, async ({ organizations, apiKeys }) => {
    await apiKeys.noteUse(apiKeyId);
    const [organization, members] = [await organizations.own(), await organizations.members()];
    const member = members.find(({ id }) => id === actorId);
    return member && { organization, member };
  });
  if (!actor) throw new InputProblem("key-unknown", [], "The member who made this key is no longer there.");
  if (!scopes.includes(scope)) throw new InputProblem("scope-missing", [], `This needs a key with the scope ${scope}.`);
  const { organization, member } = actor;
  return {
    kind: "member",
    organizationId,
    organizationKind: organization.kind,
    organizationName: organization.name,
    actorId: member.id,
    name: member.name,
    role: member.role,
  };
}
