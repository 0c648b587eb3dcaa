import Link from "next/link";
import { notFound } from "next/navigation";
import { DataTable } from "#app/design/data-table.tsx";
import { Notice } from "#app/design/notice.tsx";
import { parseJob } from "#lib/job/parse-job.ts";
import type { Ranged } from "#lib/job/result/ranged.ts";
import { formatNumber, formatUsd, formatUsdCents } from "#lib/units/format.ts";
import styles from "../../../methods/methods.module.css";
import { computeResult } from "../../compute-result.ts";
import { showAs } from "../../session.ts";

const row = (id: string, number: Ranged, format: (value: number) => string = formatNumber) => ({
  id,
  cells: [
    id,
    format(number.value),
    number.p10 === undefined ? "" : `${format(number.p10)} to ${format(number.p90 ?? 0)}`,
  ],
});

/** The verdict and the headline numbers of a job, each with its doubt. */
export default async function ResultPage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params;
  const { revision } = await showAs("job.view", ({ jobs }) => jobs.findCurrent(id));
  if (!revision) notFound();
  const job = parseJob(revision.document);
  const { scope, leakage, savings, assumptions, warnings, cautions } = await computeResult(job);
  return (
    <div className={styles.page}>
      <p>
        <Link href={`/jobs/${id}/house`}>Back to the entries</Link>
      </p>
      <h1>{job.title}</h1>
      <p className={styles.lead}>{scope.verdict.reason}</p>
      <DataTable
        caption="What was found, and what sealing saves"
        columns={[
          { label: "" },
          { label: "Value", isNumeric: true },
          { label: "8 times in 10 between", isNumeric: true },
        ]}
        rows={[
          row("Total leakage, cfm at 25 Pa", leakage.totalCfm25),
          row("To outside, cfm at 25 Pa", leakage.toOutsideCfm25),
          row("Saved a year", savings.costUsdPerYear, (value) => formatUsd(value)),
          row("Carbon dioxide avoided, lb a year", savings.co2LbPerYear),
        ]}
      />
      <DataTable
        caption="Options"
        columns={[
          { label: "Option" },
          { label: "Price", isNumeric: true },
          { label: "Leaves, cfm at 25 Pa", isNumeric: true },
        ]}
        rows={scope.options.map((option) => ({
          id: option.id,
          cells: [option.title, formatUsdCents(option.priceUsdCents), formatNumber(option.predictedCfm25.value)],
        }))}
      />
      {warnings.map((each) => (
        <Notice
          key={`${each.code} ${each.path} ${each.what}`}
          kind={each.severity === "note" ? "info" : each.severity}
          title={each.what}
        >
          {each.why} {each.nextMove}
        </Notice>
      ))}
      <h2>Cautions</h2>
      <ul>
        {cautions.map((each) => (
          <li key={each.id}>
            <strong>{each.title}.</strong> {each.text}
          </li>
        ))}
      </ul>
      <DataTable
        caption="Assumed, because it was not told"
        columns={[{ label: "What" }, { label: "Value", isNumeric: true }, { label: "Why" }]}
        rows={assumptions.map((each) => ({
          id: each.path,
          cells: [each.title, `${each.value} ${each.unit}`, each.reason],
        }))}
      />
    </div>
  );
}
