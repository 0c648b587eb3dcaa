import { DataTable } from "#app/design/data-table.tsx";
import type { Result } from "#lib/job/result/result-schema.ts";
import type { UnitText } from "#lib/units/unit-text.ts";

const FUEL_WORDS = {
  electricity: "electricity",
  naturalGas: "gas",
  propane: "propane",
  fuelOil: "heating oil",
} as const;
const PURPOSE_WORDS = { heating: "Heating", cooling: "Cooling", blower: "Blower" } as const;

const yearOf = (months: readonly number[]) => months.reduce((sum, each) => sum + each, 0);

/** What heating, cooling and the blowers use in a year, before and after. */
export function ModeTable({ modes, text }: { modes: Result["energyByMode"]; text: UnitText }) {
  return (
    <DataTable
      caption="Energy a year by what it is for"
      isCardsWhenNarrow
      columns={[
        { label: "For" },
        { label: "Before", isNumeric: true },
        { label: "After", isNumeric: true },
        { label: "Saved", isNumeric: true },
      ]}
      rows={modes.map(({ purpose, fuel, unit, beforeByMonth, afterByMonth }) => {
        const [before, after] = [yearOf(beforeByMonth), yearOf(afterByMonth)];
        return {
          id: `${purpose}-${fuel}`,
          cells: [
            purpose === "blower" ? PURPOSE_WORDS.blower : `${PURPOSE_WORDS[purpose]}, ${FUEL_WORDS[fuel]}`,
            text.quantity(before, unit),
            text.quantity(after, unit),
            text.quantity(before - after, unit),
          ],
        };
      })}
    />
  );
}
