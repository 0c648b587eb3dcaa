/** A cell that a spreadsheet would take for a formula is given a quote before it, as text. Source: OWASP, CSV injection. */
const asText = (text: string): string => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text);

const quoted = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

/** One line of comma-separated values. Numbers stand as they are, to the last digit. Source: RFC 4180. */
export function csvLine(cells: readonly (string | number | null)[]): string {
  return `${cells.map((cell) => (typeof cell === "string" ? quoted(asText(cell)) : String(cell ?? ""))).join(",")}\r\n`;
}
