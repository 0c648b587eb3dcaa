import type { ReactNode } from "react";
import { DataTable } from "./data-table.tsx";
import styles from "./worked-out.module.css";

/** One step of a calculation, as a person can follow it. */
export interface TraceStep {
  id: string;
  /** "Leakage at 25 Pa" */
  label: string;
  value: string;
  unit: string;
  equation: string;
  inputs: readonly { label: string; value: string; unit: string }[];
  source: ReactNode;
}

/** A part that opens on demand; works without script and is found by the browser's own search. */
export function Disclosure({
  title,
  children,
  isOpen = false,
}: {
  title: ReactNode;
  children: ReactNode;
  isOpen?: boolean;
}) {
  return (
    <details className={styles.disclosure} open={isOpen}>
      <summary>{title}</summary>
      <div className={styles.content}>{children}</div>
    </details>
  );
}

/** Behind every number: the equation, what went in, and where it comes from. */
export function WorkedOut({
  steps,
  title = "How is this worked out?",
}: {
  steps: readonly TraceStep[];
  title?: string;
}) {
  return (
    <Disclosure title={title}>
      {steps.map((step) => (
        <section key={step.id} className={styles.step}>
          <p className={styles.result}>
            {step.label}: <strong>{step.value}</strong> {step.unit}
          </p>
          <p className={styles.equation}>
            <code>{step.equation}</code>
          </p>
          <DataTable
            caption={`What went into ${step.label}`}
            isCaptionHidden
            columns={[{ label: "Input" }, { label: "Value", isNumeric: true }, { label: "Unit" }]}
            rows={step.inputs.map((input) => ({ id: input.label, cells: [input.label, input.value, input.unit] }))}
          />
          <p className={styles.source}>Source: {step.source}</p>
        </section>
      ))}
    </Disclosure>
  );
}
