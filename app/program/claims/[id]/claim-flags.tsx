import { Notice } from "#app/design/notice.tsx";
import { FLAGS, type FlagEvidence } from "#lib/claims/flags/claim-flag.ts";
import type { StoredFlag } from "#lib/store/repositories/claim-review.ts";
import styles from "../../program.module.css";

const titleOf = (code: string) => (Object.hasOwn(FLAGS, code) ? FLAGS[code as keyof typeof FLAGS].title : code);

/** Reasons to ask: what was seen, where, and how it may well have come about. */
export function ClaimFlags({ flags }: { flags: readonly StoredFlag[] }) {
  if (flags.length === 0) return <p>Nothing. Every check came out as it should.</p>;
  return (
    <div className={styles.stack}>
      {flags.map(({ code, evidence, innocentExplanation }) => (
        <Notice key={code} kind="info" word="To ask about" title={titleOf(code)}>
          <ul className={styles.evidence}>
            {(evidence as FlagEvidence[]).map(({ path, says }) => (
              <li key={`${path} ${says}`}>
                {says} <code>{path}</code>
              </li>
            ))}
          </ul>
          <p className={styles.innocent}>How it may well have come about: {innocentExplanation}</p>
        </Notice>
      ))}
    </div>
  );
}
