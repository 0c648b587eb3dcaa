import { DataTable } from "#app/design/data-table.tsx";
import type { RepairCatalogue } from "#lib/scope/repair-schema.ts";
import { changeWords, FIELD_WORDS } from "./repair-words.ts";
import styles from "./repairs.module.css";

/** Every change of the repairs, newest first: when, who, why, and from what to what. */
export function RepairsHistory({ catalogue }: { catalogue: RepairCatalogue }) {
  const titleOf = (id: string) => catalogue.repairs.find((repair) => repair.id === id)?.title ?? id;
  return (
    <section aria-labelledby="history">
      <h2 id="history">History</h2>
      <DataTable
        caption="Changes of the repairs"
        isCaptionHidden
        isCardsWhenNarrow
        columns={[{ label: "Version" }, { label: "On" }, { label: "By" }, { label: "Why" }, { label: "What" }]}
        rows={catalogue.history.toReversed().map(({ versionId, date, by, reason, changes }) => ({
          id: versionId,
          cells: [
            versionId,
            <span key="date" className={styles.unbroken}>
              {date}
            </span>,
            by,
            reason,
            changes.length === 0 ? (
              "no figure"
            ) : (
              <ul key="changes">
                {changes.map(({ repairId, field, before, after }) =>
                  field === "evidence" ? null : (
                    <li key={`${repairId} ${field}`}>
                      {titleOf(repairId)}, {FIELD_WORDS[field] ?? field}: {changeWords(field, before)} →{" "}
                      {changeWords(field, after)}
                    </li>
                  ),
                )}
              </ul>
            ),
          ],
        }))}
      />
    </section>
  );
}
