import type { ReactNode } from "react";
import styles from "./data-table.module.css";

export interface TableColumn {
  label: ReactNode;
  /** Figures stand at the right and in one width; their unit is in the label. */
  isNumeric?: boolean;
}

/**
 * A table of hairlines, for comparing: dense, unit in the head, first cell of a row its name. Where the columns hold
 * sentences, `isCardsWhenNarrow` makes each row a small card on a phone: the name, then each cell after its heading.
 */
export function DataTable({
  caption,
  columns,
  rows,
  isCaptionHidden = false,
  isCardsWhenNarrow = false,
}: {
  caption: ReactNode;
  columns: readonly TableColumn[];
  rows: readonly { id: string; cells: readonly ReactNode[] }[];
  isCaptionHidden?: boolean;
  isCardsWhenNarrow?: boolean;
}) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table scrolls, and the keyboard has to be able to scroll it
    <section className={styles.scroll} tabIndex={0} aria-label={typeof caption === "string" ? caption : "Table"}>
      <table className={isCardsWhenNarrow ? `${styles.table} ${styles.cards}` : styles.table}>
        <caption className={isCaptionHidden ? styles.hidden : undefined}>{caption}</caption>
        <thead>
          <tr>
            {columns.map((column, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: columns are fixed, their place is their identity
              <th key={index} scope="col" className={column.isNumeric ? styles.numeric : undefined}>
                {column.label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id}>
              {row.cells.map((cell, index) => {
                const { isNumeric, label } = columns[index] ?? {};
                if (index === 0) {
                  return (
                    <th key={`${row.id} head`} scope="row">
                      {cell}
                    </th>
                  );
                }
                return (
                  <td
                    // biome-ignore lint/suspicious/noArrayIndexKey: cells belong to columns, whose place is fixed
                    key={`${row.id} ${index}`}
                    className={isNumeric ? styles.numeric : undefined}
                    data-label={isCardsWhenNarrow && typeof label === "string" ? label : undefined}
                  >
                    {cell}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
