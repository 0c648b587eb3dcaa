import type { Metadata } from "next";
import Link from "next/link";
import { Button } from "#app/design/button.tsx";
import { Notice } from "#app/design/notice.tsx";
import { showAs } from "#app/jobs/session.ts";
import { day } from "#app/program/claim-words.ts";
import { API_SCOPES } from "#lib/exchange/api/api-scope.ts";
import styles from "../api.module.css";
import { revokeKey } from "./actions.ts";
import { KeyForm } from "./key-form.tsx";

export const metadata: Metadata = { title: "API keys" };

/** Keys of the organization: what each may do, when it was used, and the way to end it. */
export default async function KeysPage({ searchParams }: { searchParams: Promise<{ done?: string }> }) {
  const { done } = await searchParams;
  const { actor, keys, names } = await showAs("api-key.manage", async ({ apiKeys, organizations }, member) => ({
    actor: member,
    keys: await apiKeys.list(),
    names: new Map((await organizations.members()).map(({ id, name }) => [id, name])),
  }));
  return (
    <div className={styles.page}>
      <p className={styles.over}>
        <Link href="/api">Programming interface</Link>
      </p>
      <h1>API keys</h1>
      <p className={styles.lead}>
        A key acts as the person who made it, at {actor.organizationName}, and does only what is ticked. Only its
        SHA-256 is kept, so nobody can look it up later.
      </p>
      {done === "revoked" ? <Notice kind="good" title="The key is revoked and opens nothing any more." isLive /> : null}
      <h2>Keys</h2>
      {keys.length === 0 ? <p>There is none yet.</p> : null}
      <ul className={styles.keys}>
        {keys.map(({ id, name, scopes, createdById, createdAt, lastUsedAt, revokedAt }) => (
          <li key={id}>
            <div>
              <p>
                <strong>{name}</strong>
              </p>
              <p className={styles.over}>
                {scopes.join(", ")}. Made by {names.get(createdById) ?? "a former member"} on {day(createdAt)},{" "}
                {lastUsedAt ? `last used on ${day(lastUsedAt)}` : "not used yet"}.
              </p>
            </div>
            {revokedAt ? (
              <span>Revoked on {day(revokedAt)}</span>
            ) : (
              <form action={revokeKey}>
                <input type="hidden" name="id" value={id} />
                <Button type="submit" variant="secondary" aria-label={`Revoke ${name}`}>
                  Revoke
                </Button>
              </form>
            )}
          </li>
        ))}
      </ul>
      <h2>A new key</h2>
      <KeyForm scopes={API_SCOPES} />
    </div>
  );
}
