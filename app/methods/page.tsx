import type { Metadata } from "next";
import Link from "next/link";
import { METHODS } from "#lib/methods/catalogue.ts";
import { FIELD_RESULTS } from "#lib/methods/field-results.ts";
import type { MethodCard } from "#lib/methods/method-card.ts";
import { citationText } from "#lib/sources/source-title.ts";
import styles from "./methods.module.css";

export const metadata: Metadata = { title: "Methods" };

const GROUPS: Readonly<Record<MethodCard["group"], string>> = {
  air: "Air",
  measure: "Leakage readings",
  apportion: "Leakage to outside, and which leak is how large",
  distribution: "What the ducts lose",
  climate: "Weather",
  loads: "What the house needs",
  savings: "Savings and money",
  retest: "Targets and assurance",
};

export default function MethodsPage() {
  return (
    <div className={styles.page}>
      <h1>How every number is worked out</h1>
      <p className={styles.lead}>
        Each calculation with its equation, its source and its limits, a form to try it, and the published values it has
        to reproduce, computed as you look.
      </p>
      {Object.entries(GROUPS).map(([group, title]) => (
        <section key={group} className={styles.group} aria-labelledby={group}>
          <h2 id={group}>{title}</h2>
          <ul className={styles.list}>
            {METHODS.filter((method) => method.group === group).map((method) => (
              <li key={method.id}>
                <Link href={`/methods/${method.id}`} prefetch={false}>
                  <span className={styles.name}>{method.title}</span>
                  <span className={styles.summary}>{method.summary}</span>
                </Link>
              </li>
            ))}
          </ul>
        </section>
      ))}
      <section className={styles.group} aria-labelledby="field">
        <h2 id="field">What was found in real houses</h2>
        <p>For orientation only: the means of field studies are no band that one house has to fall into.</p>
        <ul>
          {FIELD_RESULTS.map(({ id, houses, found, source }) => (
            <li key={id}>
              {houses}. {found} <span className={styles.summary}>{citationText(source)}</span>
            </li>
          ))}
        </ul>
      </section>
    </div>
  );
}
