import { DataTable } from "#app/design/data-table.tsx";
import type { Result } from "#lib/job/result/result-schema.ts";
import { formatNumber } from "#lib/units/format.ts";
import type { UnitText } from "#lib/units/unit-text.ts";

const PEAK = { significantDigits: 2 } as const;

/** A program's deemed rule beside the estimate: the rule, each part of the difference, the estimate; they add up. */
export function DeemedTable({ deemed, text }: { deemed: NonNullable<Result["deemed"]>; text: UnitText }) {
  const row = (id: string, label: string, electricityKWh: number, naturalGasTherms: number) => ({
    id,
    cells: [label, text.quantity(electricityKWh, "kWh"), text.quantity(naturalGasTherms, "therm")],
  });
  return (
    <>
      <p>
        {deemed.title}, {deemed.edition}: for {text.quantity(deemed.reductionCfm25, "cfm")} less at 25 Pa. In the
        program's hours it counts {formatNumber(deemed.coincidentKW, PEAK)} kW, the estimate by the same hours{" "}
        {formatNumber(deemed.engineeringCoincidentKW, PEAK)} kW; on the design day the estimate saves{" "}
        {formatNumber(deemed.engineeringPeakKW, PEAK)} kW.
      </p>
      <DataTable
        caption="From the rule to the estimate, a year"
        isCardsWhenNarrow
        columns={[{ label: "Part" }, { label: "Electricity", isNumeric: true }, { label: "Gas", isNumeric: true }]}
        rows={[
          row("rule", "The rule", deemed.coolingKWh + deemed.heatingKWh + deemed.blowerKWh, deemed.heatingTherms),
          ...deemed.parts.map((part) => row(part.id, part.title, part.electricityKWh, part.naturalGasTherms)),
          row("estimate", "This estimate", deemed.engineeringElectricityKWh, deemed.engineeringNaturalGasTherms),
        ]}
      />
      <p>The parts are exchanged in this order; the size of each hangs on it, their sum does not.</p>
      <ul>
        {deemed.difference.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </>
  );
}
