import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { DataTable } from "#app/design/data-table.tsx";
import { showAs } from "#app/jobs/session.ts";
import { can } from "#lib/access/can.ts";
import { LEAK_KINDS } from "#lib/job/leak-kinds.ts";
import { DEMO_PRICE_BOOK } from "#lib/scope/demo-price-book.ts";
import { untouchedRepairs, withNewRepairs } from "#lib/scope/own-repairs.ts";
import { NEVERS, neverOf, PREREQUISITES } from "#lib/scope/repair-rules.ts";
import { draftOfRepair } from "../repair-draft.ts";
import { RepairForm } from "../repair-form.tsx";
import { PER_WORDS, sharePercent, sourceWords } from "../repair-words.ts";
import styles from "../repairs.module.css";

interface Props {
  params: Promise<{ id: string }>;
}

export const metadata: Metadata = { title: "Repair" };

/** One repair: how it is done, what must be true first, each figure with its source, and the form that changes them. */
export default async function RepairPage({ params }: Props) {
  const { id } = await params;
  const { newest, book, mayEdit } = await showAs("repairs.view", async ({ repairs, priceBooks }, actor) => ({
    newest: await repairs.newest(),
    book: (await priceBooks.inForceOn(new Date()))?.book ?? DEMO_PRICE_BOOK,
    mayEdit: can(actor, "repairs.edit"),
  }));
  const catalogue = newest ? withNewRepairs(newest.catalogue) : untouchedRepairs("repairs");
  const repair = catalogue.repairs.find((each) => each.id === id);
  if (!repair) notFound();
  const { easy, moderate, hard } = repair.labourHours;
  const materialName = (materialId: string) =>
    book.materials.find((each) => each.id === materialId)?.title ?? materialId;
  const unitOf = (materialId: string) => book.materials.find((each) => each.id === materialId)?.unit ?? "";
  const amounts = repair.materials.map(
    ({ materialId, amount, per }) =>
      `${materialName(materialId)}: ${amount} ${unitOf(materialId)} for ${PER_WORDS[per]}`,
  );
  return (
    <div className={styles.page}>
      <p className={styles.over}>
        <Link href="/repairs">Repairs</Link>
      </p>
      <h1>{repair.title}</h1>
      <p className={styles.lead}>
        The homeowner reads: “{repair.plainTitle}”. {repair.validity}
      </p>
      <div className={styles.two}>
        <section>
          <h2>How</h2>
          <ol>
            {repair.steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
        </section>
        <section>
          <h2>Fits</h2>
          <ul>
            {repair.fits.map((kind) => (
              <li key={kind}>{LEAK_KINDS[kind].label}</li>
            ))}
          </ul>
          {repair.widestGapIn === undefined ? null : <p>Gaps up to {repair.widestGapIn} in.</p>}
        </section>
        <section>
          <h2>First</h2>
          <ul>
            {repair.prerequisites.map((each) => (
              <li key={each}>{PREREQUISITES[each].text}</li>
            ))}
          </ul>
        </section>
        <section>
          <h2>Never</h2>
          <p className={styles.over}>These hold whatever else is changed here.</p>
          <ul>
            {neverOf(repair).map((each) => (
              <li key={each}>{NEVERS[each].text}</li>
            ))}
          </ul>
        </section>
      </div>
      <h2>Figures and their sources</h2>
      <DataTable
        caption="Figures of this repair, each with its source"
        isCaptionHidden
        isCardsWhenNarrow
        columns={[{ label: "Figure" }, { label: "Value" }, { label: "Source" }]}
        rows={[
          {
            id: "effect",
            cells: [
              "Leakage left",
              `${sharePercent(repair.remainingShare)}, give or take ${sharePercent(repair.remainingSpreadShare)}`,
              sourceWords(repair.evidence.effect),
            ],
          },
          {
            id: "labour",
            cells: [
              "Person hours",
              `${easy} easy, ${moderate} moderate, ${hard} hard to reach`,
              sourceWords(repair.evidence.labour),
            ],
          },
          {
            id: "materials",
            cells: ["Materials", amounts.join("; ") || "none", sourceWords(repair.evidence.materials)],
          },
        ]}
      />
      {mayEdit ? (
        <>
          <h2>Change the figures</h2>
          <RepairForm
            repairId={repair.id}
            onVersion={newest?.version ?? 0}
            first={draftOfRepair(repair)}
            materials={book.materials.map(({ id: value, title, unit }) => ({ value, label: `${title}, per ${unit}` }))}
          />
        </>
      ) : null}
    </div>
  );
}
