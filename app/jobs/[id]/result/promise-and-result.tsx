import { DataTable } from "#app/design/data-table.tsx";
import type { Result } from "#lib/job/result/result-schema.ts";
import { promiseParts } from "#lib/retest/promise-parts.ts";
import { formatUsd } from "#lib/units/format.ts";
import type { UnitText } from "#lib/units/unit-text.ts";

const signedUsd = (value: number) => `${value > 0 ? "+" : ""}${formatUsd(value)}`;

const FUELS = [
  { key: "electricityKWh", label: "Electricity saved a year", unit: "kWh" },
  { key: "naturalGasTherms", label: "Gas saved a year", unit: "therms" },
  { key: "propaneGallons", label: "Propane saved a year", unit: "gallons" },
  { key: "fuelOilGallons", label: "Fuel oil saved a year", unit: "gallons" },
] as const;

/** What was promised beside what the retest verified, and the difference in dollars by its parts. */
export function PromiseAndResult({ result, text }: { result: Result; text: UnitText }) {
  const { verified, promised, scope, leakage, savings } = result;
  if (!verified || !promised) return null;
  const before = (scope.target?.measure === "to-outside" ? leakage.toOutsideCfm25 : leakage.totalCfm25).value;
  const removed = verified.differenceCfm25.value;
  const parts = promiseParts({
    promisedRemovedCfm25: before - promised.predictedCfm25.value,
    verifiedRemovedCfm25: removed,
    promisedUsdPerYear: promised.savings.costUsdPerYear.value,
    verifiedUsdPerYear: savings.costUsdPerYear.value,
  });
  const row = (id: string, label: string, then: number, now: number, format: (value: number) => string) => ({
    id,
    cells: [label, format(then), format(now)],
  });
  return (
    <section aria-labelledby="promise">
      <h2 id="promise">Promise and result</h2>
      <DataTable
        caption="What was promised before the work, and what the retest verified"
        columns={[{ label: "Number" }, { label: "Promised", isNumeric: true }, { label: "Verified", isNumeric: true }]}
        rows={[
          row("leaks", "Leakage after the work, at 25 Pa", promised.predictedCfm25.value, before - removed, (value) =>
            text.quantity(value, "cfm"),
          ),
          ...FUELS.filter(({ key }) => promised.savings[key].value !== 0 || savings[key].value !== 0).map(
            ({ key, label, unit }) =>
              row(key, label, promised.savings[key].value, savings[key].value, (value) => text.quantity(value, unit)),
          ),
          row("usd", "Saved a year", promised.savings.costUsdPerYear.value, savings.costUsdPerYear.value, formatUsd),
        ]}
      />
      {parts ? (
        <p>
          Of the difference in dollars, {signedUsd(parts.howMuchUsdPerYear)} a year comes from how much was sealed and{" "}
          {signedUsd(parts.whereUsdPerYear)} from where. Weather, use and prices are held the same.
        </p>
      ) : null}
    </section>
  );
}
