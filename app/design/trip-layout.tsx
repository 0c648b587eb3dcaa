import type { ReactNode } from "react";
import styles from "./trip-layout.module.css";

/**
 * Trip, question, answer: the rail at the left, one thing at a time in the middle, the answer growing at the right. On
 * a phone the question has the screen, the answer is a bar at the foot, and the rail folds into one line above.
 */
export function TripLayout({
  rail,
  railTitle,
  children,
  answer,
  answerBar,
}: {
  /** Left out where there is one question page only. */
  rail?: ReactNode;
  /** What the folded rail says on a phone: "Readings, step 4 of 8". */
  railTitle?: string;
  children: ReactNode;
  answer: ReactNode;
  answerBar: ReactNode;
}) {
  return (
    <div className={rail ? styles.trip : `${styles.trip} ${styles.withoutRail}`}>
      {rail ? (
        <>
          <div className={styles.rail}>{rail}</div>
          <details className={styles.foldedRail}>
            <summary>{railTitle}</summary>
            {rail}
          </details>
        </>
      ) : null}
      <div className={styles.question}>{children}</div>
      <aside className={styles.answer} aria-label="Result so far">
        {answer}
      </aside>
      <div className={styles.answerBar}>{answerBar}</div>
    </div>
  );
}
