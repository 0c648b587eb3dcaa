import styles from "./site-header.module.css";

/** Our own mark: a duct that turns a corner, with one leak that has been sealed. */
function DuctMark() {
  return (
    <svg className={styles.mark} viewBox="0 0 30 24" aria-hidden="true">
      <path d="M5 22V11.5C5 7.4 7.9 5 12 5H27" fill="none" stroke="var(--kept)" strokeWidth="8" />
      <path d="M1 22H9" stroke="var(--ink)" strokeWidth="2.4" strokeLinecap="round" />
      <circle cx="20" cy="8.4" r="5.2" fill="var(--paper)" stroke="var(--lost)" strokeWidth="2" />
      <path d="M17.6 8.4l1.8 1.9 3.2 -4" fill="none" stroke="var(--lost)" strokeWidth="1.9" strokeLinecap="round" />
    </svg>
  );
}

export function Wordmark() {
  return (
    <span className={styles.wordmark}>
      <DuctMark />
      Ductmend
    </span>
  );
}
