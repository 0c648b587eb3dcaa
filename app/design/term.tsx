import { type ReactNode, useId } from "react";
import styles from "./overlay.module.css";

/**
 * A trade term with its meaning behind it: pressed, it explains itself in place. The browser's own popover, so it works
 * without script, closes with Escape or a press beside it, and gives the focus back.
 */
export function Term({
  children,
  meaning,
  label = `${children}: what it means`,
}: {
  children: string;
  meaning: ReactNode;
  /** What the button does, for whoever hears it. */
  label?: string;
}) {
  const id = useId();
  return (
    <>
      <button type="button" className={styles.term} popoverTarget={id} aria-label={label}>
        {children}
      </button>
      <span id={id} popover="auto" className={styles.meaning} role="note">
        <strong>{children}</strong>
        <span>{meaning}</span>
      </span>
    </>
  );
}
