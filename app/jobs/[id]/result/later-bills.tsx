import { DataTable } from "#app/design/data-table.tsx";
import { Notice } from "#app/design/notice.tsx";
import type { LaterBills as BilledFuel } from "#lib/job/result/loads-result.ts";
import type { Ranged } from "#lib/job/result/ranged.ts";
import { sentenceInSystem } from "#lib/units/sentence-in-system.ts";
import type { UnitText } from "#lib/units/unit-text.ts";

const FUEL_TITLES = {
  electricity: "Electricity",
  naturalGas: "Gas",
  propane: "Propane",
  fuelOil: "Heating oil",
} as const satisfies Record<BilledFuel["fuel"], string>;

const TEXT_UNITS = { kWh: "kWh", therm: "therms", gal: "gal" } as const;

/** What bills from after the work say was saved, fuel by fuel, beside the estimate. */
export function LaterBills({ fuels, text }: { fuels: readonly BilledFuel[]; text: UnitText }) {
  const range = ({ value, p10, p90 }: Ranged, unit: BilledFuel["unit"]) => {
    const number = (each: number) => text.number(each, TEXT_UNITS[unit]);
    return p10 === undefined || p90 === undefined ? (
      number(value)
    ) : (
      <>
        {number(value)}
        <br />
        {number(p10)} to {number(p90)}
      </>
    );
  };
  return (
    <section aria-labelledby="later-bills">
      <h2 id="later-bills">What the bills say since the work</h2>
      <DataTable
        caption="Saved in a year of typical weather, and where it lies 8 times in 10"
        columns={[
          { label: "Fuel" },
          { label: "By the bills", isNumeric: true },
          { label: "By the estimate", isNumeric: true },
        ]}
        rows={fuels.map(({ fuel, unit, saved, isTold, estimated }) => ({
          id: fuel,
          cells: [
            <>
              {FUEL_TITLES[fuel]}, {text.unit(TEXT_UNITS[unit])}
              {isTold ? null : (
                <>
                  <br />
                  Bills cannot tell
                </>
              )}
            </>,
            saved === null ? "–" : range(saved, unit),
            range(estimated, unit),
          ],
        }))}
      />
      {fuels.map(({ fuel, isTold, agreement, explanation: [finding, ...others] }) => (
        <Notice
          key={fuel}
          kind={isTold && agreement === "agree" ? "info" : "doubt"}
          title={sentenceInSystem(finding!, text.system)}
        >
          {others.map((sentence) => sentenceInSystem(sentence, text.system)).join(" ")}
        </Notice>
      ))}
      <p>
        A line of use against outdoor temperature is fitted to the bills of each time, and both lines run over the same
        typical year. Everything on the meter counts, so people, appliances and settings that changed count as well.
      </p>
    </section>
  );
}
