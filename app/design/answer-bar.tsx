"use client";

import { type ReactNode, useState } from "react";
import styles from "./stat-block.module.css";

/**
 * The answer on a phone: a dark bar at the foot with up to three numbers, which opens. What is inside is drawn once it is
 * open, so that no key pays for pictures that nobody sees.
 */
export function AnswerBar({
  stats,
  children,
}: {
  stats: readonly { id: string; label: string; value: string }[];
  children: ReactNode;
}) {
  const [isOpen, setIsOpen] = useState(false);
  return (
    <details className={styles.bar} onToggle={({ currentTarget }) => setIsOpen(currentTarget.open)}>
      <summary>
        <span className={styles.barStats}>
          {stats.slice(0, 3).map((stat) => (
            <span key={stat.id} className={styles.barStat}>
              <span className={styles.barLabel}>{stat.label}</span>
              <span className={styles.barValue}>{stat.value}</span>
            </span>
          ))}
        </span>
        <span className={`${styles.barAct} ${styles.barShow}`}>Show all</span>
        <span className={`${styles.barAct} ${styles.barHide}`}>Close</span>
      </summary>
      <div className={styles.barBody}>{isOpen ? children : null}</div>
    </details>
  );
}
