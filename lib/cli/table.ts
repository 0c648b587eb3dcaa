/** Rows as aligned columns; columns named in `right` are set to the right. */
export function formatTable(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  right: readonly number[] = [],
): string {
  const widths = head.map((title, column) => Math.max(title.length, ...rows.map((row) => (row[column] ?? "").length)));
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, column) => (right.includes(column) ? cell.padStart(widths[column]!) : cell.padEnd(widths[column]!)))
      .join("  ")
      .trimEnd();
  return `${[line(head), line(widths.map((width) => "-".repeat(width))), ...rows.map(line)].join("\n")}\n`;
}
