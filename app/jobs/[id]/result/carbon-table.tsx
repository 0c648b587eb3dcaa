import { DataTable } from "#app/design/data-table.tsx";
import type { Result } from "#lib/job/result/result-schema.ts";
import type { UnitText } from "#lib/units/unit-text.ts";

const WAYS = {
  "non-baseload": "What saving turns down (counted in this estimate)",
  average: "The grid's average, as a footprint counts",
} as const;

/** Carbon dioxide avoided by both ways of counting the grid, with the year of each rate. */
export function CarbonTable({ carbon, text }: { carbon: Result["carbon"]; text: UnitText }) {
  return (
    <DataTable
      caption="Carbon dioxide avoided a year"
      isCardsWhenNarrow
      columns={[
        { label: "Counted by" },
        { label: "Avoided a year", isNumeric: true },
        { label: "Of each kWh", isNumeric: true },
        { label: "Rate" },
      ]}
      rows={carbon.map((each) => ({
        id: each.id,
        cells: [
          WAYS[each.id],
          text.quantity(each.co2LbPerYear, "lb/yr"),
          text.quantity(each.electricityLbPerKWh, "lb/kWh"),
          each.note,
        ],
      }))}
    />
  );
}
