import { ROW_COLUMNS } from "./row-columns.ts";

type Cells = Readonly<Record<string, string | number>>;

/** An invented house as rows, to be filled with one's own. */
const ROWS: readonly Cells[] = [
  { row: "house", label: "12 Sample Street (invented)", zip: "53711", conditionedFloorAreaFt2: 1640 },
  {
    row: "reading",
    test: "before",
    kind: "total-leakage",
    stage: "existing",
    direction: "pushing",
    date: "2026-11-12",
    ductPressurePa: 15.1,
    flowCfm: 214,
  },
  { row: "reading", test: "before", ductPressurePa: 25.2, flowCfm: 290 },
  { row: "reading", test: "before", ductPressurePa: 40.3, flowCfm: 386 },
  {
    row: "leak",
    label: "Supply plenum",
    kind: "plenum-joint",
    side: "supply",
    place: "attic",
    gapLengthIn: 30,
    gapWidthIn: 0.25,
    reach: "easy",
  },
  { row: "leak", label: "Bedroom boot", kind: "boot-to-drywall", side: "supply", place: "attic", band: "pencil-wide" },
  {
    row: "leak",
    kind: "filter-slot",
    side: "return",
    place: "conditioned",
    estimateCfm25: 20,
    note: "No cover, see photo",
  },
];

const quotedCell = (cell: string): string => (/[",\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

/** The sample as comma-separated text, every column in it. */
export function sampleRows(): string {
  const names = ROW_COLUMNS.map(({ name }) => name);
  const lines = ROWS.map((cells) => names.map((name) => quotedCell(String(cells[name] ?? ""))).join(","));
  return `${[names.join(","), ...lines].join("\r\n")}\r\n`;
}
