import type { ReactNode } from "react";
import styles from "./stat-block.module.css";

export interface Stat {
  label: ReactNode;
  value: ReactNode;
  unit?: ReactNode;
  /** How sure it is, in words a person says: "could be $190 to $430". */
  doubt?: ReactNode;
}

/** A number with its doubt beside it, smaller and softer. */
function StatBlock({ label, value, unit, doubt }: Stat) {
  return (
    <div className={styles.stat}>
      <dt className={styles.label}>{label}</dt>
      <dd className={styles.line}>
        <span className={styles.value}>{value}</span>
        {unit ? <span className={styles.unit}> {unit}</span> : null}
        {doubt ? <span className={styles.doubt}> {doubt}</span> : null}
      </dd>
    </div>
  );
}

/** A few numbers side by side, parted by hairlines; many of them in rows of three where there is room. */
export function StatGrid({ stats }: { stats: readonly (Stat & { id: string })[] }) {
  return (
    <dl className={stats.length > 4 ? `${styles.grid} ${styles.many}` : styles.grid}>
      {stats.map(({ id, ...stat }) => (
        <StatBlock key={id} {...stat} />
      ))}
    </dl>
  );
}
