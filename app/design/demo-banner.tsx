import type { ReactNode } from "react";
import styles from "./site-header.module.css";

/** Says that what is on the page was made up. */
export function DemoBanner({ children }: { children?: ReactNode }) {
  return (
    <aside className={styles.banner} aria-label="About the data">
      <p>
        <strong>Invented examples.</strong>{" "}
        {children ?? "Every house, name and figure here is made up, so that you can try things without harm."}
      </p>
    </aside>
  );
}
