import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { DemoBanner } from "#app/design/demo-banner.tsx";
import { unitSystem } from "#app/units/unit-system.ts";
import { PRACTICE_SCENARIOS } from "#lib/simulate/practice-scenarios.ts";
import styles from "../practice.module.css";
import type { PracticeQuery } from "../practice-query.ts";
import { PracticeBench } from "./practice-bench.tsx";

interface Props {
  params: Promise<{ id: string }>;
  searchParams: Promise<PracticeQuery>;
}

const scenarioOf = (id: string) => PRACTICE_SCENARIOS.find((scenario) => scenario.id === id);

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: scenarioOf((await params).id)?.title ?? "Practice house" };
}

/** One practice house. The address holds the set-up, so the page works without script too. */
export default async function PracticeHousePage({ params, searchParams }: Props) {
  const { id } = await params;
  const scenario = scenarioOf(id);
  if (!scenario) notFound();
  return (
    <>
      <DemoBanner>The practice house, its leaks and its test fan do not exist.</DemoBanner>
      <div className={styles.page}>
        <header className={styles.head}>
          <p className={styles.over}>
            <Link href="/practice">All practice houses</Link>
          </p>
          <h1>{scenario.title}</h1>
          <p className={styles.lead}>{scenario.story}</p>
        </header>
        <PracticeBench key={id} scenario={scenario} query={await searchParams} units={await unitSystem()} />
      </div>
    </>
  );
}
