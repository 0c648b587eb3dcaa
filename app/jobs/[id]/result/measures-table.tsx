import { DataTable } from "#app/design/data-table.tsx";
import type { MeasuresInOrder } from "#lib/job/result/measures-result.ts";
import { formatUsd } from "#lib/units/format.ts";
import type { UnitText } from "#lib/units/unit-text.ts";

const FUELS = [
  { key: "electricityKWh", unit: "kWh", label: "Electricity" },
  { key: "naturalGasTherms", unit: "therm", label: "Gas" },
  { key: "propaneGallons", unit: "gal", label: "Propane" },
  { key: "fuelOilGallons", unit: "gal", label: "Heating oil" },
] as const;

/** Each measure and the duct work in the order in which they are done, with what each saves at its turn. */
export function MeasuresTable({ measures, text }: { measures: MeasuresInOrder; text: UnitText }) {
  const { turns, together } = measures;
  const fuels = FUELS.filter(({ key }) => turns.some((turn) => turn[key] !== 0));
  const row = (id: string, name: string, saved: MeasuresInOrder["together"]) => ({
    id,
    cells: [name, ...fuels.map(({ key, unit }) => text.quantity(saved[key], unit)), formatUsd(saved.costUsdPerYear)],
  });
  return (
    <>
      <DataTable
        caption="Saved a year by each measure at its turn"
        isCardsWhenNarrow
        columns={[
          { label: "Measure" },
          ...fuels.map(({ label }) => ({ label, isNumeric: true })),
          { label: "Dollars", isNumeric: true },
        ]}
        rows={[...turns.map((turn) => row(turn.id, turn.title, turn)), row("together", "Together", together)]}
      />
      <p>
        Each saves of what the ones before it leave, so nothing is counted twice. Another order would share the same sum
        out in another way. Dollars are rounded, so they may miss their sum by a few.
      </p>
    </>
  );
}
