import { Text, View } from "@react-pdf/renderer";
import { textWidth } from "#lib/pictures/measure-text.ts";
import type { DocumentTable } from "../document-view.ts";
import { STYLES } from "./pdf-theme.ts";

/** The caption, the head and one row stay together at the foot of a page, in points. */
const KEEP_TOGETHER_POINTS = 70;
/** A table of no more rows than this stays on one page. */
const MOST_ROWS_KEPT = 8;
const CELL_SIZE = 10.5;
const LEAST_COLUMN_POINTS = 34;
/** Room to write by hand. */
const BLANK_COLUMN_SHARE = 0.22;
const BLANK_ROW_POINTS = 26;

/** A table whose rows never break, whose head repeats on each page, and whose caption never stands alone. */
export function TablePdf({ table, widthPoints }: { table: DocumentTable; widthPoints: number }) {
  const widths = columnWidths(table, widthPoints);
  const last = table.rows.length - 1;
  const hasBlank = table.columns.some((_, column) => isBlank(table.rows, column));
  return (
    <View style={STYLES.table} wrap={table.rows.length > MOST_ROWS_KEPT}>
      <Text style={STYLES.caption} minPresenceAhead={KEEP_TOGETHER_POINTS}>
        {table.caption}
      </Text>
      <View style={STYLES.headRow} fixed>
        {table.columns.map(({ label, isNumeric }, column) => (
          <Text
            key={label}
            style={[STYLES.headCell, { width: widths[column] }, ...(isNumeric ? [STYLES.numeric] : [])]}
          >
            {label}
          </Text>
        ))}
      </View>
      {table.rows.map((cells, index) => (
        <View
          // The rows of a document are in a fixed order and may repeat.
          // biome-ignore lint/suspicious/noArrayIndexKey: see above
          key={index}
          style={[
            STYLES.row,
            ...(hasBlank ? [{ minHeight: BLANK_ROW_POINTS }] : []),
            ...(table.hasTotal && index === last ? [STYLES.totalRow] : []),
          ]}
          wrap={false}
          // A last row alone on a page would be an orphan.
          minPresenceAhead={index === last - 1 ? 20 : undefined}
        >
          {cells.map((cell, column) => (
            <Text
              // biome-ignore lint/suspicious/noArrayIndexKey: cells are in the order of the columns
              key={column}
              style={[
                STYLES.cell,
                { width: widths[column] },
                ...(table.columns[column]?.isNumeric ? [STYLES.numeric] : []),
                ...(table.hasTotal && index === last ? [STYLES.strong] : []),
              ]}
            >
              {cell}
            </Text>
          ))}
        </View>
      ))}
    </View>
  );
}

/** A column to be filled in by hand. */
const isBlank = (rows: DocumentTable["rows"], column: number): boolean =>
  rows.length > 0 && rows.every((row) => (row[column] ?? "").trim() === "");

/**
 * Numbers and short words get the room they need on one line; what is left is shared among the long columns by how
 * much they hold.
 */
function columnWidths({ columns, rows }: DocumentTable, widthPoints: number): number[] {
  const needs = columns.map(({ label }, column) => {
    const longestWord = Math.max(
      ...label.split(" ").map((word) => textWidth({ text: word, size: 9.5, weight: 600 })),
      ...rows.flatMap((row) =>
        (row[column] ?? "").split(" ").map((word) => textWidth({ text: word, size: CELL_SIZE })),
      ),
    );
    const longest = Math.max(0, ...rows.map((row) => textWidth({ text: row[column] ?? "", size: CELL_SIZE })));
    const head = textWidth({ text: label, size: 9.5, weight: 600 });
    // A short head stays on one line, a longer one on two.
    const least = Math.max(LEAST_COLUMN_POINTS, longestWord + 10, Math.min(head + 10, head / 2 + 26));
    if (isBlank(rows, column)) return { least, wish: Math.max(least, BLANK_COLUMN_SHARE * widthPoints) };
    return { least, wish: Math.max(least, Math.min(longest + 10, 0.6 * widthPoints)) };
  });
  const least = needs.reduce((sum, need) => sum + need.least, 0);
  const wish = needs.reduce((sum, need) => sum + need.wish, 0);
  if (wish <= widthPoints) {
    const widest = needs.reduce((best, need, index) => (need.wish > needs[best]!.wish ? index : best), 0);
    return needs.map((need, index) => need.wish + (index === widest ? widthPoints - wish : 0));
  }
  const room = Math.max(0, widthPoints - least);
  return needs.map((need) => need.least + (room * (need.wish - need.least)) / Math.max(1e-9, wish - least));
}
