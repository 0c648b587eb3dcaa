import type { Metadata } from "next";
import Link from "next/link";
import { Button } from "#app/design/button.tsx";
import { DataTable } from "#app/design/data-table.tsx";
import { DemoBanner } from "#app/design/demo-banner.tsx";
import { EmptyState } from "#app/design/empty-state.tsx";
import { Notice } from "#app/design/notice.tsx";
import { TextField } from "#app/design/text-field.tsx";
import { showAs } from "#app/jobs/session.ts";
import type { InspectionSampleRecord } from "#lib/store/repositories/inspection-samples.ts";
import { formatPercent } from "#lib/units/format.ts";
import type { DrawnSample } from "#lib/work/claims/draw-inspections.ts";
import { day } from "../claim-words.ts";
import styles from "../program.module.css";
import { draw } from "./actions.ts";

export const metadata: Metadata = { title: "Inspections" };

function Sample({ record, number }: { record: InspectionSampleRecord; number: number }) {
  const sample = record.document as DrawnSample;
  return (
    <section aria-labelledby={record.id}>
      <h3 id={record.id}>
        Sample {number}: {sample.sampleCount} of {sample.populationCount} claims, drawn on {day(record.createdAt)}
      </h3>
      <p>
        {formatPercent(sample.confidenceProbability)} sure to within ±{formatPercent(sample.precisionShare)} of the true
        share, with the correction for so few claims (Cochran 1977 §4.4). Seed {record.seed}: the same seed and claims
        give the same sample.
      </p>
      <DataTable
        caption={`Claims to inspect, sample ${number}`}
        isCardsWhenNarrow
        columns={[
          { label: "Group" },
          { label: "In it", isNumeric: true },
          { label: "Drawn", isNumeric: true },
          { label: "Which" },
        ]}
        rows={sample.strata.map(({ stratum, populationCount, sampleCount, claimIds }) => ({
          id: stratum,
          cells: [
            stratum,
            String(populationCount),
            String(sampleCount),
            <span key="which">
              {claimIds.slice(0, 40).map((claimId, index) => (
                <span key={claimId}>
                  {index > 0 ? ", " : ""}
                  <Link href={`/program/claims/${claimId}`}>{sample.references[claimId] ?? claimId}</Link>
                </span>
              ))}
              {claimIds.length > 40 ? ` and ${claimIds.length - 40} more` : ""}
            </span>,
          ],
        }))}
      />
    </section>
  );
}

/** Which claims get a visit: drawn by chance with a seed, as many as confidence and precision ask for. */
export default async function InspectionsPage({ searchParams }: { searchParams: Promise<{ problem?: string }> }) {
  const { problem } = await searchParams;
  const { programs, isDemo } = await showAs("inspection.draw", async (scope) => {
    const list = await scope.programs.list();
    const samples = await Promise.all(list.map(({ id }) => scope.inspectionSamples.list(id)));
    return {
      isDemo: (await scope.organizations.own()).isDemo,
      programs: list.map((program, index) => ({ ...program, samples: samples[index] ?? [] })),
    };
  });
  return (
    <>
      {isDemo ? <DemoBanner>The program and its claims are made up.</DemoBanner> : null}
      <div className={styles.page}>
        <p className={styles.over}>
          <Link href="/program">Claims</Link>
        </p>
        <h1>Which claims get a visit</h1>
        <p>
          Chance decides, so that nobody is picked on. Groups are the contractors, with and without something to ask
          about; each gives its part, at least two.
        </p>
        {problem ? (
          <Notice kind="problem" title="Nothing was drawn." isLive>
            The seed is a whole number from 0, and there must be at least one claim that stands.
          </Notice>
        ) : null}
        {programs.map(({ id, name, samples }) => (
          <section key={id} aria-labelledby={`program-${id}`}>
            <h2 id={`program-${id}`}>{name}</h2>
            <form action={draw} className={styles.filters}>
              <input type="hidden" name="programId" value={id} />
              <TextField label="Seed" name="seed" inputMode="numeric" defaultValue="1" required />
              <Button type="submit">Draw a sample</Button>
            </form>
            {samples.length === 0 ? (
              <EmptyState title="No sample yet">
                Its size follows from the confidence and the precision of the program’s rule.
              </EmptyState>
            ) : (
              samples.map((record, index) => <Sample key={record.id} record={record} number={samples.length - index} />)
            )}
          </section>
        ))}
      </div>
    </>
  );
}
