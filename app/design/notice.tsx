import type { ReactNode } from "react";
import styles from "./notice.module.css";

export type NoticeKind = "info" | "doubt" | "problem" | "good";

const WORDS: Readonly<Record<NoticeKind, string>> = {
  info: "Note",
  doubt: "Doubtful",
  problem: "Problem",
  good: "Good",
};

/** What the program says back: what is so, why, and the next move. The sign always has its word. */
export function Notice({
  kind,
  title,
  word = WORDS[kind],
  children,
  actions,
  isLive = false,
}: {
  kind: NoticeKind;
  title: ReactNode;
  /** Another word for the sign, or another language. */
  word?: string;
  children?: ReactNode;
  actions?: ReactNode;
  /** Read out when it appears, for answers to what was just typed. */
  isLive?: boolean;
}) {
  return (
    <div className={`${styles.notice} ${styles[kind]}`} role={isLive ? "status" : undefined}>
      <span className={styles.sign}>
        <NoticeSign kind={kind} />
        {word}
      </span>
      <div className={styles.body}>
        <p className={styles.title}>{title}</p>
        {children ? <div className={styles.text}>{children}</div> : null}
        {actions ? <div className={styles.actions}>{actions}</div> : null}
      </div>
    </div>
  );
}

const SIGNS: Readonly<Record<NoticeKind, { outline: string; inside: string }>> = {
  info: { outline: "M12 3a9 9 0 1 0 0 18a9 9 0 1 0 0 -18Z", inside: "M12 11v5.5M12 7.3v.4" },
  doubt: { outline: "M12 3.5L21.5 20.5H2.5Z", inside: "M12 10v5M12 17.4v.4" },
  problem: { outline: "M8 3H16L21 8V16L16 21H8L3 16V8Z", inside: "M8.7 8.7l6.6 6.6M15.3 8.7l-6.6 6.6" },
  good: { outline: "M12 3a9 9 0 1 0 0 18a9 9 0 1 0 0 -18Z", inside: "M7.7 12.4l3 3.1l5.6 -6.6" },
};

function NoticeSign({ kind }: { kind: NoticeKind }) {
  const { outline, inside } = SIGNS[kind];
  return (
    <svg
      viewBox="0 0 24 24"
      aria-hidden="true"
      fill="none"
      stroke="currentColor"
      strokeWidth="2"
      strokeLinecap="round"
      strokeLinejoin="round"
    >
      <path d={outline} />
      <path d={inside} />
    </svg>
  );
}
