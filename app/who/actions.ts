"use server";

import { cookies } from "next/headers";
import { redirect } from "next/navigation";
import { IDENTITY_COOKIE, isDemoIdentityId } from "#lib/access/current-actor.ts";
import { DEMO_IDENTITIES } from "#lib/access/demo-identities.ts";

/** Acts as another invented person from here on, and goes where that person works. */
export async function actAsPerson(form: FormData): Promise<void> {
  const id = String(form.get("identity") ?? "");
  if (!isDemoIdentityId(id)) redirect("/who");
  (await cookies()).set(IDENTITY_COOKIE, id, { httpOnly: true, sameSite: "strict", path: "/" });
  redirect(DEMO_IDENTITIES[id].organizationKind === "program" ? "/program" : "/jobs");
}
