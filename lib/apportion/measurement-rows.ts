import type { Share } from "#lib/units/quantity.ts";

export type LeakSide = "supply" | "return";

/** Which leakage a measurement tells: the whole, one side, or what of it reaches outside. */
export const MEASUREMENT_NAMES = [
  "total",
  "toOutside",
  "supply",
  "return",
  "supplyToOutside",
  "returnToOutside",
] as const;
export type MeasurementName = (typeof MEASUREMENT_NAMES)[number];

interface Row {
  side: LeakSide | null;
  countsOutsideOnly: boolean;
}

const ROWS: Readonly<Record<MeasurementName, Row>> = {
  total: { side: null, countsOutsideOnly: false },
  toOutside: { side: null, countsOutsideOnly: true },
  supply: { side: "supply", countsOutsideOnly: false },
  return: { side: "return", countsOutsideOnly: false },
  supplyToOutside: { side: "supply", countsOutsideOnly: true },
  returnToOutside: { side: "return", countsOutsideOnly: true },
};

/** The four quarters that leakage not yet found may lie in; each is a cell of the reconciliation. */
export const QUARTERS = [
  { side: "supply", outside: true },
  { side: "supply", outside: false },
  { side: "return", outside: true },
  { side: "return", outside: false },
] as const satisfies readonly { side: LeakSide; outside: boolean }[];

/** How much of a leak a measurement sees: the a of a·x. */
export function seenShare(name: MeasurementName, side: LeakSide, toOutsideShare: Share): Share {
  const row = ROWS[name];
  if (row.side !== null && row.side !== side) return 0;
  return row.countsOutsideOnly ? toOutsideShare : 1;
}
