import type { Metadata } from "next";
import Link from "next/link";
import type { ReactNode } from "react";
import { LinkButton } from "#app/design/button.tsx";
import { DemoBanner } from "#app/design/demo-banner.tsx";
import { Notice } from "#app/design/notice.tsx";
import { StatGrid } from "#app/design/stat-block.tsx";
import { unitSystem } from "#app/units/unit-system.ts";
import { WithTerms } from "#app/words/with-terms.tsx";
import type { Ranged } from "#lib/job/result/ranged.ts";
import { formatPercent, formatUsd } from "#lib/units/format.ts";
import { sentenceInSystem } from "#lib/units/sentence-in-system.ts";
import { unitText } from "#lib/units/unit-text.ts";
import { computeEffects, computeResult } from "../../compute-result.ts";
import { showJob } from "../../show-job.ts";
import { doubtWords } from "../../trip/answer.ts";
import { warningIn } from "../../trip/warning-in.ts";
import { PaperLinks } from "../papers/paper-links.tsx";
import { AirTable } from "./air-table.tsx";
import { AssumptionsTable } from "./assumptions-table.tsx";
import { CarbonTable } from "./carbon-table.tsx";
import { ChargesTable } from "./charges-table.tsx";
import { ClaimLink } from "./claim-link.tsx";
import { ConvergenceLine } from "./convergence-line.tsx";
import { DeemedTable } from "./deemed-table.tsx";
import { LaterBills } from "./later-bills.tsx";
import { MeasuresTable } from "./measures-table.tsx";
import { ModeTable } from "./mode-table.tsx";
import { MoreDraws } from "./more-draws.tsx";
import { PromiseAndResult } from "./promise-and-result.tsx";
import styles from "./result.module.css";
import { ChartPictures, HousePictures } from "./result-pictures.tsx";
import { ComplianceTable, LoadsTable, OptionsTable, RetestTable, TraceSteps } from "./result-tables.tsx";
import { StationLink } from "./station-link.tsx";

export const metadata: Metadata = { title: "Result" };

const VERDICTS = {
  "worth-sealing": "Worth sealing.",
  marginal: "Marginal.",
  "not-worth-sealing": "Not worth sealing.",
} as const;

const stat = (id: string, label: ReactNode, number: Ranged, format: (value: number) => string, unit?: string) => ({
  id,
  label,
  value: format(number.value),
  unit,
  doubt: doubtWords(number, format),
});

/** The answer of a job: the verdict first, every number with its doubt, and everything behind it on demand. */
export default async function ResultPage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params;
  const { record, revision, job } = await showJob(id);
  const result = await computeResult(job);
  const { scope, leakage, savings, economics, warnings, cautions } = result;
  const chosen = scope.options.find((option) => option.id === scope.chosen);
  const usd = (value: number) => formatUsd(value);
  const text = unitText(await unitSystem());
  const units = text.system;
  const cfm = (value: number) => text.number(value, "cfm");
  return (
    <>
      {record.isDemo ? <DemoBanner>{`${record.title} is made up.`}</DemoBanner> : null}
      <div className={styles.page}>
        <p className={styles.over}>
          <Link href={`/jobs/${id}/house`}>{record.title}</Link>
          {result.basis === "verified" ? ", verified by the retest" : ""}
        </p>
        <h1>{VERDICTS[scope.verdict.code]}</h1>
        <p className={styles.lead}>
          <WithTerms>{sentenceInSystem(scope.verdict.reason, units)}</WithTerms>
        </p>
        {scope.verdict.otherReasons.length > 0 ? (
          <ul>
            {scope.verdict.otherReasons.map((reason) => (
              <li key={reason}>{sentenceInSystem(reason, units)}</li>
            ))}
          </ul>
        ) : null}
        <StatGrid
          stats={[
            stat("total", <WithTerms>Leakage at 25 Pa</WithTerms>, leakage.totalCfm25, cfm, text.unit("cfm")),
            stat("outside", <WithTerms>To outside</WithTerms>, leakage.toOutsideCfm25, cfm, text.unit("cfm")),
            stat("share", "Of the fan's air, to outside", leakage.fractionOfFanFlow, (value) => formatPercent(value)),
            stat("cost", "The leaks cost", economics.doingNothingUsdPerYear, usd, "a year"),
            stat("saved", "Saved by sealing", savings.costUsdPerYear, usd, "a year"),
            stat("net", `Left over after ${economics.measureLifeYears} years`, economics.netSavingsUsd, usd),
          ]}
        />
        <p className={styles.actions}>
          <LinkButton href={`/jobs/${id}/proposal`}>Make a proposal</LinkButton>
          <LinkButton href={`/jobs/${id}/options`} variant="secondary">
            Choose the work
          </LinkButton>
          {result.basis === "verified" ? <ClaimLink jobId={id} entriesId={job.id} revision={revision} /> : null}
          <LinkButton href={`/jobs/${id}/house`} variant="secondary">
            Change the entries
          </LinkButton>
        </p>
        <PaperLinks
          jobId={id}
          hasWork={scope.chosen !== null}
          isVerified={Boolean(result.verified && result.promised)}
        />
        {result.narrowMost ? (
          <Notice kind="info" title="What would narrow the range most">
            <WithTerms>{result.narrowMost}</WithTerms>
          </Notice>
        ) : null}
        <PromiseAndResult result={result} text={text} />
        {result.laterBills ? <LaterBills fuels={result.laterBills} text={text} /> : null}
        <HousePictures job={job} result={result} units={units} />
        <section aria-labelledby="options">
          <h2 id="options">What can be done</h2>
          <OptionsTable scope={scope} text={text} />
        </section>
        <ChartPictures job={job} result={result} units={units} />
        {result.retest ? (
          <section aria-labelledby="retest">
            <h2 id="retest">The retest</h2>
            <RetestTable retest={result.retest} text={text} />
          </section>
        ) : null}
        <section aria-labelledby="need">
          <h2 id="need">What the house needs</h2>
          <LoadsTable loads={result.loads} text={text} />
        </section>
        <section aria-labelledby="air">
          <h2 id="air">Air, pressure and capacity</h2>
          <AirTable job={job} result={result} text={text} />
        </section>
        <section aria-labelledby="cost">
          <h2 id="cost">The energy and what it costs</h2>
          <ModeTable modes={result.energyByMode} text={text} />
          <ChargesTable charges={result.charges} />
          <CarbonTable carbon={result.carbon} text={text} />
        </section>
        {result.measuresInOrder ? (
          <section aria-labelledby="measures">
            <h2 id="measures">Together with other measures</h2>
            <MeasuresTable measures={result.measuresInOrder} text={text} />
          </section>
        ) : null}
        <section aria-labelledby="doubts">
          <h2 id="doubts">What to look at again</h2>
          {warnings.length === 0 ? <p>Nothing.</p> : null}
          <div className={styles.stack}>
            {warnings
              .map((warning) => warningIn(units, warning))
              .map((each) => (
                <Notice
                  key={`${each.code} ${each.path} ${each.what}`}
                  kind={each.severity === "note" ? "info" : each.severity}
                  title={each.what}
                >
                  <WithTerms>{`${each.why} ${each.nextMove}`}</WithTerms>
                </Notice>
              ))}
          </div>
        </section>
        <section aria-labelledby="cautions">
          <h2 id="cautions">Safety</h2>
          <ul className={styles.cautions}>
            {cautions.map((each) => (
              <li key={each.id}>
                <strong>{each.title}.</strong> <WithTerms>{each.text}</WithTerms>
              </li>
            ))}
          </ul>
        </section>
        <section aria-labelledby="rules">
          <h2 id="rules">Rules</h2>
          <ComplianceTable compliance={result.compliance} text={text} />
        </section>
        {result.deemed ? (
          <section aria-labelledby="deemed">
            <h2 id="deemed">Beside the program's rule</h2>
            <DeemedTable deemed={result.deemed} text={text} />
          </section>
        ) : null}
        <section aria-labelledby="assumed">
          <h2 id="assumed">What was assumed</h2>
          <p>
            Each of these can be told instead; its name leads to the field. The dollars say what the answer would be at
            the two ends of the value, with everything else as it is.
          </p>
          <AssumptionsTable
            text={text}
            jobId={id}
            assumptions={result.assumptions}
            effects={await computeEffects(job, result)}
            dollars={scope.chosen === null ? "The leaks cost a year" : "Saved a year"}
          />
        </section>
        <section aria-labelledby="worked-out">
          <h2 id="worked-out">How it was worked out</h2>
          <TraceSteps trace={result.trace} />
          <ConvergenceLine result={result} />
          {chosen ? (
            <MoreDraws
              jobId={id}
              seed={result.seed}
              measures={chosen.measures.map(({ siteId, repairId }) => ({ siteId, repairId }))}
            />
          ) : null}
          <p className={styles.over}>
            Engine {result.engineVersion}, {result.draws.toLocaleString("en-US")} draws, seed {result.seed}. Weather:{" "}
            <StationLink zip={job.house.zip} place={result.place} />. Places by GeoNames, CC BY 4.0.
          </p>
        </section>
      </div>
    </>
  );
}
