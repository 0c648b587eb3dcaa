import type { Metadata } from "next";
import Link from "next/link";
import { DataTable } from "#app/design/data-table.tsx";
import { showAs } from "#app/jobs/session.ts";
import { can } from "#lib/access/can.ts";
import { learnedEffects, untouchedRepairs, withNewRepairs } from "#lib/scope/own-repairs.ts";
import { Learning } from "./learning.tsx";
import { sharePercent } from "./repair-words.ts";
import styles from "./repairs.module.css";
import { RepairsHistory } from "./repairs-history.tsx";

export const metadata: Metadata = { title: "Repairs" };

/** The repairs as this organization plans them, what its retests taught, and every change there was. */
export default async function RepairsPage() {
  const { newest, experience, organizationName, mayEdit } = await showAs(
    "repairs.view",
    async ({ repairs }, actor) => ({
      newest: await repairs.newest(),
      experience: await repairs.experience(),
      organizationName: actor.organizationName,
      mayEdit: can(actor, "repairs.edit"),
    }),
  );
  const catalogue = newest ? withNewRepairs(newest.catalogue) : untouchedRepairs("repairs");
  const learned = learnedEffects(catalogue, experience);
  return (
    <div className={styles.page}>
      <p className={styles.over}>
        <Link href="/jobs">{organizationName}</Link>
      </p>
      <h1>Repairs</h1>
      <p className={styles.lead}>
        {newest
          ? `Version ${newest.version}. A job takes it until it has repairs of its own.`
          : "These are the figures the product starts with; most are common trade practice. Put your own in their place."}
      </p>
      <DataTable
        caption="Repairs, what they leave, and the hours they take"
        isCaptionHidden
        isCardsWhenNarrow
        columns={[
          { label: "Repair" },
          { label: "Leaves", isNumeric: true },
          { label: "Give or take", isNumeric: true },
          { label: "Person hours, easy / moderate / hard", isNumeric: true },
          { label: "Whose figures" },
        ]}
        rows={catalogue.repairs.map((repair) => ({
          id: repair.id,
          cells: [
            <Link key="link" href={`/repairs/${repair.id}`}>
              {repair.title}
            </Link>,
            sharePercent(repair.remainingShare),
            sharePercent(repair.remainingSpreadShare),
            `${repair.labourHours.easy} / ${repair.labourHours.moderate} / ${repair.labourHours.hard}`,
            repair.isOffered === false ? "not offered" : whoseFigures(repair.id, newest?.catalogue.history ?? []),
          ],
        }))}
      />
      <Learning
        learned={learned}
        experience={experience}
        titles={new Map(catalogue.repairs.map(({ id, title }) => [id, title]))}
        usesRetests={newest?.usesRetests ?? false}
        version={newest?.version ?? 0}
        mayEdit={mayEdit}
      />
      {newest ? <RepairsHistory catalogue={newest.catalogue} /> : null}
    </div>
  );
}

function whoseFigures(repairId: string, history: readonly { changes: readonly { repairId: string }[] }[]): string {
  return history.some(({ changes }) => changes.some((change) => change.repairId === repairId))
    ? "your own"
    : "the product’s";
}
