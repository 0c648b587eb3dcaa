import Link from "next/link";
import { Button } from "#app/design/button.tsx";
import { DataTable } from "#app/design/data-table.tsx";
import { Disclosure } from "#app/design/worked-out.tsx";
import type { LearnedEffect } from "#lib/scope/learning.ts";
import type { ExperienceRecord } from "#lib/store/repositories/repairs.ts";
import { formatNumber, formatPercent } from "#lib/units/format.ts";
import { decideLearning, lookThroughJobs } from "./actions.ts";
import { sharePercent } from "./repair-words.ts";
import styles from "./repairs.module.css";

/** What the organization's own retests say of its repairs, and whether they count. */
export function Learning({
  learned,
  experience,
  titles,
  usesRetests,
  version,
  mayEdit,
}: {
  learned: readonly LearnedEffect[];
  experience: readonly ExperienceRecord[];
  titles: ReadonlyMap<string, string>;
  usesRetests: boolean;
  version: number;
  mayEdit: boolean;
}) {
  const tried = learned.filter(({ retestsCount }) => retestsCount > 0);
  return (
    <section aria-labelledby="learned">
      <h2 id="learned">What your retests taught</h2>
      <p>
        Every retest of a job whose repairs are stated says how much they left. A few leaks move a figure a little, many
        move it far: the product’s figure counts like ten leaks of your own.
      </p>
      {tried.length === 0 ? (
        <p>No retest has been taken in yet.</p>
      ) : (
        <DataTable
          caption="Effects after your own retests"
          isCaptionHidden
          isCardsWhenNarrow
          columns={[
            { label: "Repair" },
            { label: "Catalogue leaves", isNumeric: true },
            { label: "Yours leaves", isNumeric: true },
            { label: "Known to", isNumeric: true },
            { label: "Retests", isNumeric: true },
            { label: "Leaks", isNumeric: true },
            { label: "Weight of your own", isNumeric: true },
          ]}
          rows={tried.map((effect) => ({
            id: effect.repairId,
            cells: [
              titles.get(effect.repairId) ?? effect.repairId,
              sharePercent(effect.catalogueShare),
              sharePercent(effect.remainingShare),
              `± ${sharePercent(effect.shareStandardUncertainty)}`,
              String(effect.retestsCount),
              String(effect.sitesCount),
              weightWords(effect.ownEvidenceShare),
            ],
          }))}
        />
      )}
      <p>
        <strong>{usesRetests ? "New jobs use your retests." : "New jobs use the catalogue alone."}</strong>
      </p>
      {mayEdit ? (
        <div className={styles.actions}>
          <form action={decideLearning}>
            <input type="hidden" name="onVersion" value={version} />
            <input type="hidden" name="wanted" value={usesRetests ? "no" : "yes"} />
            <Button type="submit" variant="secondary">
              {usesRetests ? "Use the catalogue alone" : "Use what our retests taught"}
            </Button>
          </form>
          <form action={lookThroughJobs}>
            <Button type="submit" variant="quiet">
              Look through our jobs for retests
            </Button>
          </form>
        </div>
      ) : null}
      {experience.length > 0 ? (
        <Disclosure title={`Retests taken in: ${experience.length}`}>
          <DataTable
            caption="Retests taken in"
            isCaptionHidden
            isCardsWhenNarrow
            columns={[
              { label: "Job" },
              { label: "Repaired, cfm at 25 Pa", isNumeric: true },
              { label: "Removed, cfm at 25 Pa", isNumeric: true },
              { label: "Give or take", isNumeric: true },
            ]}
            rows={experience.map(({ jobId, jobTitle, treated, removedCfm25, standardUncertaintyCfm25 }) => ({
              id: jobId,
              cells: [
                <Link key="link" href={`/jobs/${jobId}/result`}>
                  {jobTitle}
                </Link>,
                formatNumber(treated.reduce((sum, { cfm25 }) => sum + cfm25, 0)),
                formatNumber(removedCfm25),
                formatNumber(standardUncertaintyCfm25, { significantDigits: 2 }),
              ],
            }))}
          />
        </Disclosure>
      ) : null}
    </section>
  );
}

/** A weight that rounds to nothing is still a weight. */
const weightWords = (share: number): string => (share > 0 && share < 0.005 ? "under 1%" : formatPercent(share));
