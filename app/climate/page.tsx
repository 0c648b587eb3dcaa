import type { Metadata } from "next";
import { Button } from "#app/design/button.tsx";
import { ErrorSummary } from "#app/design/error-summary.tsx";
import { Notice } from "#app/design/notice.tsx";
import { TextField } from "#app/design/text-field.tsx";
import { unitSystem } from "#app/units/unit-system.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import styles from "./climate.module.css";
import { type ClimateQuery, type RawQuery, readClimateQuery } from "./climate-query.ts";
import { ClimateView } from "./climate-view.tsx";

interface PageProps {
  searchParams: Promise<RawQuery>;
}

export async function generateMetadata({ searchParams }: PageProps): Promise<Metadata> {
  const query = readClimateQuery(await searchParams, await unitSystem());
  const found = await lookUp(query);
  const isWrong = query.errors.length > 0 || (found !== null && "problems" in found);
  return { title: isWrong ? "Error: Climate of a place" : "Climate of a place" };
}

/** The weather that an estimate would take for a ZIP code, and from where. All of it is in the address. */
export default async function ClimatePage({ searchParams }: PageProps) {
  const units = await unitSystem();
  const query = readClimateQuery(await searchParams, units);
  const found = await lookUp(query);
  const problems = found && "problems" in found ? found.problems : [];
  const ofZip = problems.filter(({ pointer }) => pointer === "#/house/zip");
  const errors = [
    ...query.errors,
    // The repair of a job names a field that is not here.
    ...ofZip.map(({ detail }) => ({ fieldId: "zip" as const, text: `${detail}. Check the digits` })),
  ];
  return (
    <div className={styles.page}>
      <h1>Climate of a place</h1>
      <p className={styles.lead}>
        The weather an estimate takes for a ZIP code: which station it comes from, how cold and hot it gets, and how
        many degree days that makes.
      </p>
      <ErrorSummary errors={errors} />
      <form method="get" action="/climate" noValidate className={styles.form}>
        <TextField
          id="zip"
          name="zip"
          label="ZIP code"
          hint="Five digits, anywhere in the 50 states and the District of Columbia."
          inputMode="numeric"
          autoComplete="postal-code"
          defaultValue={query.typedZip}
          key={query.typedZip}
          error={errors.find(({ fieldId }) => fieldId === "zip")?.text}
        />
        <Button type="submit">Show the climate</Button>
      </form>
      {problems
        .filter((each) => !ofZip.includes(each))
        .map(({ detail, fix }) => (
          <Notice key={detail} kind="problem" title={`${detail}.`}>
            {fix}
          </Notice>
        ))}
      {found && "reference" in found ? <ClimateView query={query} reference={found.reference} units={units} /> : null}
    </div>
  );
}

async function lookUp({
  zip,
  stationId,
}: ClimateQuery): Promise<{ reference: ReferenceData } | { problems: InputProblem["errors"] } | null> {
  if (zip === undefined && stationId === undefined) return null;
  try {
    const house = { ...(zip ? { zip } : {}), ...(stationId ? { stationId } : {}) };
    return { reference: await loadReferenceData({ house }) };
  } catch (thrown) {
    if (thrown instanceof InputProblem) return { problems: thrown.errors };
    throw thrown;
  }
}
