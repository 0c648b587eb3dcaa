"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { actAs } from "#app/jobs/session.ts";
import { isApiScope } from "#lib/exchange/api/api-scope.ts";

export interface KeyReply {
  problems: readonly { fieldId: string; text: string }[];
  /** The new key, shown this once. */
  key?: string;
  /** What was typed, so that nothing is typed twice. */
  name?: string;
}

const LONGEST_NAME = 100;

/** Makes a key that acts as the one who makes it. */
export async function makeKey(_before: KeyReply | null, form: FormData): Promise<KeyReply> {
  const name = String(form.get("name") ?? "").trim();
  const scopes = form.getAll("scope").map(String).filter(isApiScope);
  const problems = [
    ...(name === "" || name.length > LONGEST_NAME
      ? [{ fieldId: "name", text: `Enter what the key is for, in 1 to ${LONGEST_NAME} characters` }]
      : []),
    ...(scopes.length === 0 ? [{ fieldId: "scope-calculate", text: "Choose at least one thing the key may do" }] : []),
  ];
  if (problems.length > 0) return { problems, name };
  const { key } = await actAs("api-key.manage", async ({ apiKeys, audit }) => {
    const made = await apiKeys.create({ name, scopes });
    await audit.record({
      action: "api-key.made",
      subjectKind: "api-key",
      subjectId: made.id,
      detail: { name, scopes },
    });
    return made;
  });
  revalidatePath("/api/keys");
  return { problems: [], key };
}

export async function revokeKey(form: FormData): Promise<void> {
  const id = String(form.get("id") ?? "");
  await actAs("api-key.manage", async ({ apiKeys, audit }) => {
    await apiKeys.revoke(id);
    await audit.record({ action: "api-key.revoked", subjectKind: "api-key", subjectId: id });
  });
  redirect("/api/keys?done=revoked");
}
