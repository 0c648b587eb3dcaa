import Link from "next/link";
import styles from "./trip-rail.module.css";

export interface TripStep {
  id: string;
  label: string;
  href: string;
  state: "done" | "current" | "waiting";
  /** What was answered, in small print: "1,640 ft², 1978". */
  detail?: string;
  /** What the missing answers cost in certainty: "adds $60 to the range". */
  missing?: string;
}

const STATE_WORDS: Readonly<Record<TripStep["state"], string>> = {
  done: "done",
  current: "you are here",
  waiting: "not started",
};

/** The trip through the house: where one is, what was answered, what is still open. */
export function TripRail({ steps, label = "The visit, step by step" }: { steps: readonly TripStep[]; label?: string }) {
  return (
    <nav aria-label={label}>
      <ol className={styles.rail}>
        {steps.map((step) => (
          <li key={step.id} className={`${styles.step} ${styles[step.state]}`}>
            <Link href={step.href} aria-current={step.state === "current" ? "step" : undefined} className={styles.link}>
              <span className={styles.dot} aria-hidden="true">
                {step.state === "done" ? <Tick /> : null}
              </span>
              <span className={styles.words}>
                <span className={styles.label}>
                  {step.label}
                  <span className={styles.hidden}>, {STATE_WORDS[step.state]}</span>
                </span>
                {/* Both lines are kept: what is open comes late, and nothing may jump. */}
                <span className={styles.small}>
                  {step.detail ? <span className={styles.detail}>{step.detail}</span> : null}
                  {step.missing ? <span className={styles.missing}>{step.missing}</span> : null}
                </span>
              </span>
            </Link>
          </li>
        ))}
      </ol>
    </nav>
  );
}

function Tick() {
  return (
    <svg
      viewBox="0 0 12 12"
      fill="none"
      stroke="currentColor"
      strokeWidth="2"
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
    >
      <path d="M2.5 6.4l2.4 2.5l4.6 -5.4" />
    </svg>
  );
}
