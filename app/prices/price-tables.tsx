import { DataTable } from "#app/design/data-table.tsx";
import type { PriceBook } from "#lib/job/price-book-schema.ts";
import { shownText } from "./price-changes.ts";
import { draftOf, type PriceRow } from "./price-draft.ts";
import { fitsColumns, PRICE_GROUPS, PRICE_LISTS, type PriceField, shortLabel } from "./price-fields.ts";

const isFigure = (kind: string): boolean => kind !== "text" && kind !== "choice";

/** The parts of a rule that are set, each after its label. */
function rowInWords(row: PriceRow, fields: readonly PriceField[]): string {
  return fields
    .filter(({ name }) => row[name])
    .map((field) => `${shortLabel(field)}: ${shownText(field, row[field.name] ?? "")}`)
    .join("; ");
}

/** A whole price book to read: single values first, then its lists. */
export function PriceTables({ book }: { book: PriceBook }) {
  const draft = draftOf(book, "");
  return (
    <>
      {PRICE_GROUPS.map(({ title, reason, fields }) => (
        <section key={title}>
          <h2>{title}</h2>
          <p>{reason}</p>
          <DataTable
            caption={title}
            isCaptionHidden
            columns={[{ label: "What" }, { label: "Value", isNumeric: true }]}
            rows={fields.map((field) => ({
              id: field.name,
              cells: [shortLabel(field), shownText(field, draft.fields[field.name] ?? "")],
            }))}
          />
        </section>
      ))}
      {PRICE_LISTS.map((list) => {
        const { id, title, reason, fields } = list;
        return (
          <section key={id}>
            <h2>{title}</h2>
            <p>{reason}</p>
            {draft.lists[id].length === 0 ? <p>None.</p> : null}
            {draft.lists[id].length > 0 && !fitsColumns(list) ? (
              <ul>
                {draft.lists[id].map((row) => (
                  <li key={row.id}>
                    <strong>{row.title}</strong>: {rowInWords(row, fields.slice(1))}
                  </li>
                ))}
              </ul>
            ) : null}
            {draft.lists[id].length > 0 && fitsColumns(list) ? (
              <DataTable
                caption={title}
                isCaptionHidden
                isCardsWhenNarrow
                columns={fields.map((field) => ({ label: shortLabel(field), isNumeric: isFigure(field.kind) }))}
                rows={draft.lists[id].map((row) => ({
                  id: row.id ?? row.placeKind ?? "",
                  cells: fields.map((field) => shownText(field, row[field.name] ?? "") || "not set"),
                }))}
              />
            ) : null}
          </section>
        );
      })}
    </>
  );
}
