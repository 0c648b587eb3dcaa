import type { Metadata } from "next";
import { DataTable } from "#app/design/data-table.tsx";
import { Disclosure } from "#app/design/worked-out.tsx";
import { ROW_COLUMNS, ROW_KINDS, type RowKind } from "#lib/exchange/csv/row-columns.ts";
import { LEAK_KINDS } from "#lib/job/leak-kinds.ts";
import { PLACE_KINDS, PLACE_LABELS } from "#lib/job/place.ts";
import styles from "../jobs.module.css";
import { ImportForm } from "./import-form.tsx";

export const metadata: Metadata = { title: "Open a job file or a spreadsheet" };

export default function ImportPage() {
  return (
    <div className={styles.page}>
      <h1>Which file holds the job?</h1>
      <p className={styles.prose}>
        A job file (JSON) or the rows of a spreadsheet (CSV). One file is one job. It is checked first: if something in
        it cannot be used, you see where and what to do, and nothing is kept.
      </p>
      <ImportForm />
      <section aria-labelledby="rows" className={styles.part}>
        <h2 id="rows">From a spreadsheet</h2>
        <p className={styles.prose}>
          One row tells the house, one row each step of a test, one row each leak. Begin with{" "}
          <a href="/jobs/import/sample" download>
            the sample (CSV)
          </a>
          , fill in your own rows, and save as “CSV UTF-8”. Leave out columns that you do not use. Equipment and ducts
          are asked on the trip afterwards. Figures are in the unit that the column names, whichever units you display.
        </p>
        <div className={styles.tables}>
          {ROW_KINDS.map((kind) => (
            <Columns key={kind} kind={kind} />
          ))}
        </div>
        <Disclosure title="Names of the kinds of leak">
          <DataTable
            caption="Kinds of leak"
            isCaptionHidden
            columns={[{ label: "Write" }, { label: "It is" }]}
            rows={Object.values(LEAK_KINDS).map(({ id, label, tradeDescription }) => ({
              id,
              cells: [<code key="id">{id}</code>, `${label}. ${tradeDescription}`],
            }))}
          />
        </Disclosure>
        <Disclosure title="Names of the places">
          <DataTable
            caption="Places"
            isCaptionHidden
            columns={[{ label: "Write" }, { label: "It is" }]}
            rows={PLACE_KINDS.map((kind) => ({ id: kind, cells: [<code key="id">{kind}</code>, PLACE_LABELS[kind]] }))}
          />
        </Disclosure>
      </section>
    </div>
  );
}

const ROW_TITLES: Readonly<Record<RowKind, string>> = {
  house: "The house: one row, with “house” in the column “row”",
  reading: "A step of a test: “reading” in the column “row”",
  leak: "A leak: “leak” in the column “row”",
};

/** What may stand in each kind of row, straight from what the reader of the file knows. */
function Columns({ kind }: { kind: RowKind }) {
  return (
    <DataTable
      caption={ROW_TITLES[kind]}
      columns={[{ label: "Column" }, { label: "What to write" }]}
      rows={ROW_COLUMNS.flatMap(({ name, of }) => {
        const words = of[kind];
        return words === undefined || name === "row"
          ? []
          : [{ id: name, cells: [<code key="name">{name}</code>, words] }];
      })}
    />
  );
}
