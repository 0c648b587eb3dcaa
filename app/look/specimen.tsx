import type { ReactNode } from "react";
import styles from "./look.module.css";

/** One component with a name, in one of its states. */
export function Specimen({ name, children }: { name: string; children: ReactNode }) {
  return (
    <div className={styles.specimen}>
      <h3 className={styles.name}>{name}</h3>
      <div>{children}</div>
    </div>
  );
}

export function Chapter({
  id,
  title,
  intro,
  children,
}: {
  id: string;
  title: string;
  intro?: ReactNode;
  children: ReactNode;
}) {
  return (
    <section className={styles.chapter} aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {intro ? <p>{intro}</p> : null}
      {children}
    </section>
  );
}
