import "server-only";
import { cookies } from "next/headers";
import { notFound, redirect } from "next/navigation";
import type { MemberActor } from "#lib/access/actor.ts";
import { type Action, requireAllowed } from "#lib/access/can.ts";
import { currentActor, IDENTITY_COOKIE } from "#lib/access/current-actor.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import type { Scope } from "#lib/store/scope.ts";
import { sharedStore } from "#lib/store/shared-store.ts";

export async function whoActs(): Promise<MemberActor> {
  return currentActor((await cookies()).get(IDENTITY_COOKIE)?.value);
}

/** One unit of work for whoever acts, once it is clear that they may do it. */
export async function actAs<T>(action: Action, work: (scope: Scope, actor: MemberActor) => Promise<T>): Promise<T> {
  const actor = await whoActs();
  requireAllowed(actor, action);
  const store = await sharedStore();
  return await store.withOrganization(actor, (scope) => work(scope, actor));
}

/** The same for a page: what is not there for this organization is not found, what is not theirs to see says so. */
export async function showAs<T>(action: Action, work: (scope: Scope, actor: MemberActor) => Promise<T>): Promise<T> {
  try {
    return await actAs(action, work);
  } catch (thrown) {
    if (thrown instanceof InputProblem && thrown.code === "not-found") notFound();
    if (thrown instanceof InputProblem && thrown.code === "not-allowed") redirect("/who?why=not-allowed");
    throw thrown;
  }
}
