import type { Metadata } from "next";
import Link from "next/link";
import { DemoBanner } from "#app/design/demo-banner.tsx";
import { PRACTICE_SCENARIOS } from "#lib/simulate/practice-scenarios.ts";
import styles from "./practice.module.css";

export const metadata: Metadata = { title: "Practice house" };

/** Invented houses whose leaks are known, to learn a test on before it counts. */
export default function PracticePage() {
  return (
    <>
      <DemoBanner>The practice houses, their leaks and their test fan do not exist.</DemoBanner>
      <div className={styles.list}>
        <h1>Practice house</h1>
        <p className={styles.lead}>
          Houses whose leaks are known. Set up the test, turn the fan, read the gauge: it shows what it would show in
          such a house, also when a hose is wrong. At the end the truth stands beside your result.
        </p>
        <ol className={styles.scenarios}>
          {PRACTICE_SCENARIOS.map(({ id, title, story }) => (
            <li key={id}>
              <Link href={`/practice/${id}`}>{title}</Link>
              <p>{story}</p>
            </li>
          ))}
        </ol>
      </div>
    </>
  );
}
