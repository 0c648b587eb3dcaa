import type { Metadata } from "next";
import Link from "next/link";
import { Button } from "#app/design/button.tsx";
import { DataTable } from "#app/design/data-table.tsx";
import { DemoBanner } from "#app/design/demo-banner.tsx";
import { Notice } from "#app/design/notice.tsx";
import { showAs } from "#app/jobs/session.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { day } from "../claim-words.ts";
import styles from "../program.module.css";
import { cancel, recomputeAll } from "./actions.ts";
import { ImportForm } from "./import-form.tsx";

export const metadata: Metadata = { title: "Claims by file" };

const STATES = {
  waiting: "Waiting",
  running: "Being checked",
  finished: "Done",
  canceled: "Stopped",
  failed: "Failed",
} as const;

/** Claims that come as a file, and how far each file is. */
export default async function ImportPage({ searchParams }: { searchParams: Promise<{ batch?: string }> }) {
  const { batch } = await searchParams;
  const { batches, refused, contractors, isDemo } = await showAs("claim.import", async (scope) => {
    const own = await scope.organizations.own();
    const list = await scope.claimBatches.list();
    const shown = list.find(({ id }) => id === batch) ?? list[0];
    return {
      isDemo: own.isDemo,
      batches: list,
      refused: shown ? await scope.claimBatches.refusedLines(shown.id) : [],
      contractors: (await scope.organizations.partners())
        .filter(({ kind }) => kind === "contractor")
        .map(({ id, name }) => ({ value: id, label: name })),
    };
  });
  const [newest] = batches;
  return (
    <>
      {isDemo ? <DemoBanner>The program and its claims are made up.</DemoBanner> : null}
      <div className={styles.page}>
        <p className={styles.over}>
          <Link href="/program">Claims</Link>
        </p>
        <h1>Claims by file</h1>
        <p>
          Each claim keeps its packet byte for byte and is recomputed. A claim that is there already is not taken twice,
          so a file can be sent again.
        </p>
        <ImportForm contractors={contractors} />
        <form action={recomputeAll} className={styles.again}>
          <Button type="submit" variant="secondary">
            Recompute all claims again
          </Button>
          <p>
            By engine {ENGINE_VERSION}. The log keeps what came out before. More than 2,000 are left to workers:{" "}
            <code>npm run -s ductmend -- worker</code>
          </p>
        </form>
        {newest?.state === "running" ? (
          <Notice
            kind="info"
            title={newest.kind === "import" ? "The newest file is being checked." : "All claims are being recomputed."}
            isLive
          >
            {newest.sameCount + newest.differsCount + newest.invalidCount} of {newest.storedCount} claims so far.{" "}
            <Link href="/program/import">Look again</Link>
          </Notice>
        ) : null}
        {batches.length > 0 ? (
          <DataTable
            caption="Files and recomputations, the newest first"
            isCardsWhenNarrow
            columns={[
              { label: "What" },
              { label: "Lines", isNumeric: true },
              { label: "Taken in", isNumeric: true },
              { label: "There before", isNumeric: true },
              { label: "Refused", isNumeric: true },
              { label: "Same, other, cannot", isNumeric: true },
              { label: "State" },
            ]}
            rows={batches.map((each) => ({
              id: each.id,
              cells: [
                `${each.sourceName}, ${day(each.createdAt)}`,
                String(each.lineCount),
                each.kind === "import" ? String(each.storedCount) : "–",
                each.kind === "import" ? String(each.alreadyThereCount) : "–",
                each.kind === "recompute" ? (
                  "–"
                ) : each.refusedCount > 0 ? (
                  <Link key="refused" href={`/program/import?batch=${each.id}`}>
                    {each.refusedCount}
                  </Link>
                ) : (
                  "0"
                ),
                `${each.sameCount}, ${each.differsCount}, ${each.invalidCount}`,
                each.state === "running" ? (
                  <form key="stop" action={cancel}>
                    <input type="hidden" name="id" value={each.id} />
                    {STATES[each.state]}{" "}
                    <Button type="submit" variant="quiet">
                      {each.kind === "import" ? `Stop ${each.sourceName}` : "Stop recomputing"}
                    </Button>
                  </form>
                ) : (
                  STATES[each.state]
                ),
              ],
            }))}
          />
        ) : null}
        {refused.length > 0 ? (
          <DataTable
            caption="Lines that were refused"
            columns={[{ label: "Line", isNumeric: true }, { label: "Why" }]}
            rows={refused.map(({ line, detail }) => ({ id: String(line), cells: [String(line), detail] }))}
          />
        ) : null}
      </div>
    </>
  );
}
