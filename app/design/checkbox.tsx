import type { ComponentProps, ReactNode } from "react";
import styles from "./field.module.css";

/** Yes or no to one statement. */
export function Checkbox({
  label,
  hint,
  ...input
}: { label: ReactNode; hint?: ReactNode } & Omit<ComponentProps<"input">, "type">) {
  return (
    <label className={`${styles.choice} ${styles.plain}`}>
      <input type="checkbox" className={`${styles.mark} ${styles.square}`} {...input} />
      <span className={styles.choiceText}>
        <span>{label}</span>
        {hint ? <span className={styles.choiceHint}>{hint}</span> : null}
      </span>
    </label>
  );
}
