import { DataTable } from "#app/design/data-table.tsx";
import type { Result } from "#lib/job/result/result-schema.ts";
import { formatUsd } from "#lib/units/format.ts";

const FUEL_WORDS = {
  electricity: "Electricity",
  naturalGas: "Gas",
  propane: "Propane",
  fuelOil: "Heating oil",
} as const;

/** What each fuel costs before and after, and at which price the saving was counted. */
export function ChargesTable({ charges }: { charges: Result["charges"] }) {
  return (
    <DataTable
      caption="Cost a year of what the estimate counts, without fixed charges"
      isCardsWhenNarrow
      columns={[
        { label: "Fuel" },
        { label: "Before", isNumeric: true },
        { label: "After", isNumeric: true },
        { label: "Saved", isNumeric: true },
        { label: "Price" },
      ]}
      rows={charges.map((each) => ({
        id: each.fuel,
        cells: [
          FUEL_WORDS[each.fuel],
          formatUsd(each.beforeUsdPerYear),
          formatUsd(each.afterUsdPerYear),
          formatUsd(each.savedUsdPerYear),
          each.explanation,
        ],
      }))}
    />
  );
}
