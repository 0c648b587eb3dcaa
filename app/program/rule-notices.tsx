import { LinkButton } from "#app/design/button.tsx";
import { Notice } from "#app/design/notice.tsx";
import type { RuleNotice } from "#lib/work/claims/rule-notices.ts";
import { day } from "./claim-words.ts";
import styles from "./program.module.css";

const things = (count: number): string => (count === 1 ? "One thing changes" : `${count} things change`);

/** New editions of programs' rules that nobody of this firm has marked as seen, each with the way to whom it touches. */
export function RuleNotices({ notices }: { notices: readonly RuleNotice[] }) {
  if (notices.length === 0) return null;
  return (
    <div className={styles.news}>
      {notices.map(({ ruleId, programName, effectiveOn, changes }) => (
        <Notice
          key={ruleId}
          kind="info"
          word="New rule"
          title={`${programName}: another rule counts for work done from ${day(effectiveOn)} on.`}
          actions={
            <LinkButton variant="secondary" href={`/program/changed-rules/${ruleId}`}>
              See what it touches
            </LinkButton>
          }
        >
          {changes.length === 0
            ? "Only its title is another."
            : `${things(changes.length)}: ${changes.map(({ what }) => what.toLowerCase()).join("; ")}.`}
        </Notice>
      ))}
    </div>
  );
}
