import { DataTable } from "#app/design/data-table.tsx";
import type { Job } from "#lib/job/job-schema.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { formatNumber, formatPercent } from "#lib/units/format.ts";
import { sentenceInSystem } from "#lib/units/sentence-in-system.ts";
import type { UnitText } from "#lib/units/unit-text.ts";

interface Row {
  id: string;
  cells: [string, string, string];
}

const MODE_WORDS = { heating: "heating", cooling: "cooling" } as const;

function rowsOf(system: Result["systems"][number], job: Job, text: UnitText): Row[] {
  const { id, airflow, runs, distribution } = system;
  const told = job.systems.find((each) => each.id === id)!;
  const cfm = (value: number) => text.quantity(value, "cfm");
  const row = (key: string, label: string, before: string, after: string): Row => ({
    id: `${id} ${key}`,
    cells: [`${label}, ${told.label}`, before, after],
  });
  const ofModes = (["heating", "cooling"] as const).flatMap((mode): Row[] => {
    const { capacity, supplementary } = distribution[mode] ?? {};
    if (!capacity) return [];
    const regained = `${text.quantity(capacity.regainedBtuPerH, "Btu/h")} (${formatNumber(capacity.regainedTons, { significantDigits: 2 })} ton)`;
    return [
      ...(supplementary
        ? [
            row(
              "strips",
              "Resistance heat beside the heat pump, a year",
              `${text.quantity(supplementary.beforeKWh, "kWh")} (${formatPercent(supplementary.beforeShare)})`,
              `${text.quantity(supplementary.afterKWh, "kWh")} (${formatPercent(supplementary.afterShare)})`,
            ),
          ]
        : []),
      row(`${mode} capacity`, `Capacity that reaches the rooms again, ${MODE_WORDS[mode]} design day`, "", regained),
    ];
  });
  return [
    row("fan", "Fan flow", cfm(airflow.fanFlowBeforeCfm), cfm(airflow.fanFlowAfterCfm)),
    row(
      "static",
      "External static pressure",
      text.quantity(airflow.externalStaticBeforePa, "Pa"),
      text.quantity(airflow.externalStaticAfterPa, "Pa"),
    ),
    row("rooms", "Air delivered to the rooms", cfm(airflow.deliveredBeforeCfm), cfm(airflow.deliveredAfterCfm)),
    ...runs.flatMap(({ id: runId, airBeforeCfm, airAfterCfm }) => {
      const run = told.runs.find((each) => each.id === runId);
      const name = run?.label ?? runId;
      return runs.length > 2 || run?.side === "supply"
        ? [row(runId, `Air of ${name}`, cfm(airBeforeCfm), cfm(airAfterCfm))]
        : [];
    }),
    ...ofModes,
  ];
}

/** What sealing does beyond kilowatt-hours: air to the rooms, pressures, capacity, resistance heat. */
export function AirTable({ job, result, text }: { job: Job; result: Result; text: UnitText }) {
  return (
    <>
      <p>House pressure: {sentenceInSystem(result.housePressure.explanation, text.system)}</p>
      <DataTable
        caption="Air, pressure and capacity before and after the work"
        isCardsWhenNarrow
        columns={[{ label: "What" }, { label: "Before", isNumeric: true }, { label: "After", isNumeric: true }]}
        rows={result.systems.flatMap((system) => rowsOf(system, job, text))}
      />
    </>
  );
}
