import { DataTable } from "#app/design/data-table.tsx";
import { Disclosure } from "#app/design/worked-out.tsx";
import type { AuditRecord } from "#lib/store/repositories/audit.ts";
import type { ClaimEvent } from "#lib/store/repositories/claim-review.ts";
import { CLAIM_ACTS, CLAIM_STATE_WORDS } from "../../claim-words.ts";
import styles from "../../program.module.css";

const moment = (date: Date) => date.toLocaleString("en-US", { dateStyle: "medium", timeStyle: "short" });

/** What was said and decided, in order; below it the record of every act, which nobody can change. */
export function ClaimTalk({
  events,
  log,
  names,
  otherSide,
}: {
  events: readonly ClaimEvent[];
  log: readonly AuditRecord[];
  names: ReadonlyMap<string, string>;
  otherSide: string;
}) {
  const who = (id: string | null) => (id === null ? "Ductmend" : (names.get(id) ?? otherSide));
  return (
    <>
      {events.length === 0 ? <p>Nothing yet.</p> : null}
      <ol className={styles.thread}>
        {events.map(({ kind, authorId, text, toState, createdAt }) => (
          <li key={`${kind} ${createdAt.getTime()} ${text}`}>
            <p className={styles.over}>
              {who(authorId)}, {moment(createdAt)}
              {toState ? `: ${CLAIM_STATE_WORDS[toState].toLowerCase()}` : ""}
            </p>
            <p>{text}</p>
          </li>
        ))}
      </ol>
      <Disclosure title="The record">
        <DataTable
          caption="Every act on this claim, the newest first"
          isCardsWhenNarrow
          columns={[{ label: "When" }, { label: "Who" }, { label: "What" }]}
          rows={log.map(({ action, actorId, createdAt }, index) => ({
            id: `${index} ${action}`,
            cells: [moment(createdAt), who(actorId), CLAIM_ACTS[action] ?? action],
          }))}
        />
      </Disclosure>
    </>
  );
}
