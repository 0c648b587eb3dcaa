import type { Metadata } from "next";
import Link from "next/link";
import { DemoBanner } from "#app/design/demo-banner.tsx";
import { unitSystem } from "#app/units/unit-system.ts";
import { setupSheet } from "#lib/setup/setup-sheet.ts";
import { unitText } from "#lib/units/unit-text.ts";
import styles from "./setup.module.css";
import { loadSetupInstruments } from "./setup-instruments.ts";
import { readSetupQuery, type SetupQuery } from "./setup-query.ts";
import { SetupQuestions } from "./setup-questions.tsx";
import { SetupSheetView } from "./setup-sheet-view.tsx";

export const metadata: Metadata = { title: "Set up a test" };

const today = (): string => new Date().toLocaleDateString("en-CA");

/** The set-up of a test from a few answers: the drawing of its hoses beside an ordered checklist. */
export default async function SetupPage({ searchParams }: { searchParams: Promise<SetupQuery> }) {
  const query = await searchParams;
  const jobId = typeof query.job === "string" ? query.job : undefined;
  const { job, ...instruments } = await loadSetupInstruments(jobId);
  const units = await unitSystem();
  const form = readSetupQuery({ query, instruments, date: today(), units });
  const sheet = setupSheet(form.answers);
  const isInvented = form.answers.fan?.isInvented || form.answers.gauge?.isInvented;
  return (
    <>
      {isInvented ? <DemoBanner>The demonstration fan and gauge do not exist.</DemoBanner> : null}
      <div className={styles.page}>
        <header className={styles.head}>
          <p className={styles.over}>
            {job ? <Link href={`/jobs/${job.id}/readings`}>Readings of {job.title}</Link> : "Set up a test"}
          </p>
          <h1>{sheet.title}</h1>
          <p className={styles.purpose}>{sheet.purpose}</p>
        </header>
        <SetupQuestions form={form} instruments={instruments} jobId={job?.id} />
        <SetupSheetView sheet={sheet} answers={form.answers} text={unitText(units)} />
      </div>
    </>
  );
}
