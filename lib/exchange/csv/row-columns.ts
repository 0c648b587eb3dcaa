/** What a row of the spreadsheet tells. */
export const ROW_KINDS = ["house", "reading", "leak"] as const;
export type RowKind = (typeof ROW_KINDS)[number];

/** A column, under the name that the job file has for it; spaces, case, dashes and underscores do not matter. */
export interface RowColumn {
  name: string;
  /** The rows it belongs to, with what stands in it there. */
  of: Partial<Record<RowKind, string>>;
  isNumber?: boolean;
}

/** The columns, in the order of the sample. The names end in their units; so does what is typed below them. */
export const ROW_COLUMNS: readonly RowColumn[] = [
  { name: "row", of: { house: "house", reading: "reading", leak: "leak" } },
  { name: "label", of: { house: "Name of the house", leak: "Where exactly (may be empty)" } },
  { name: "zip", of: { house: "Five digits (may be empty)" } },
  { name: "conditionedFloorAreaFt2", of: { house: "Conditioned floor area, ft² (may be empty)" }, isNumber: true },
  { name: "test", of: { reading: "Any name; the rows of one test share it" } },
  {
    name: "kind",
    of: { reading: "total-leakage or leakage-to-outside", leak: "Kind of leak, by one of the names below" },
  },
  { name: "stage", of: { reading: "existing, rough-in, during-work, final or retest" } },
  { name: "direction", of: { reading: "pushing or pulling" } },
  { name: "part", of: { reading: "whole, supply or return (may be empty)" } },
  { name: "date", of: { reading: "YYYY-MM-DD (may be empty)" } },
  { name: "baselineBeforePa", of: { reading: "Baseline before, Pa (may be empty)" }, isNumber: true },
  { name: "baselineAfterPa", of: { reading: "Baseline after, Pa (may be empty)" }, isNumber: true },
  { name: "houseToOutsidePressurePa", of: { reading: "To outside only: house to outside, Pa" }, isNumber: true },
  { name: "ductToHousePressurePa", of: { reading: "To outside only: duct to house, left over, Pa" }, isNumber: true },
  { name: "ductPressurePa", of: { reading: "Duct pressure of this step, Pa, with its sign" }, isNumber: true },
  { name: "flowCfm", of: { reading: "Fan flow of this step, cfm" }, isNumber: true },
  { name: "system", of: { reading: "Empty: the whole house", leak: "Empty: the main system" } },
  { name: "side", of: { leak: "supply or return" } },
  { name: "place", of: { leak: "Place, by one of the names below" } },
  {
    name: "band",
    of: { leak: "Size by eye: hairline, pencil-wide, finger-wide, hand-wide or fully-open (may be empty)" },
  },
  { name: "gapLengthIn", of: { leak: "Or size by tape: length, in" }, isNumber: true },
  { name: "gapWidthIn", of: { leak: "with its width, in" }, isNumber: true },
  { name: "estimateCfm25", of: { leak: "Or size as a flow at 25 Pa, cfm" }, isNumber: true },
  { name: "reach", of: { leak: "easy, moderate or hard (may be empty)" } },
  { name: "panPressurePa", of: { leak: "Pressure pan reading, Pa (may be empty)" }, isNumber: true },
  { name: "note", of: { reading: "Anything (may be empty)", leak: "Anything (may be empty)" } },
];

/** A name without what spreadsheets add to it: "Duct Pressure_Pa" and "ductPressurePa" are one. */
export const plainName = (name: string): string => name.toLowerCase().replaceAll(/[^a-z0-9]/g, "");

/** A choice as people write it: "Vented crawlspace" for "vented-crawlspace". */
export const choiceName = (cell: string): string => cell.toLowerCase().replaceAll(/[\s_-]+/g, "-");
