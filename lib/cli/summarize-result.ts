import type { Job } from "#lib/job/job-schema.ts";
import type { Assumption } from "#lib/job/result/evidence-result.ts";
import type { Ranged } from "#lib/job/result/ranged.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { formatNumber, formatPercent, formatUsd, formatUsdCents } from "#lib/units/format.ts";
import { formatTable } from "./table.ts";

const range = ({ p10, p90 }: Ranged, format: (value: number) => string) =>
  p10 === undefined || p90 === undefined ? "" : `${format(p10)} to ${format(p90)}`;
const row = (
  title: string,
  number: Ranged,
  unit: string,
  format: (value: number) => string = formatNumber,
): string[] => [title, format(number.value), unit, range(number, format)];

const capitalized = (word: string) => word.charAt(0).toUpperCase() + word.slice(1);
const UNITLESS = new Set(["", "ratio", "count"]);
function assumedValue({ value, unit }: Assumption): string {
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return value;
  if (unit === "share") return formatPercent(value);
  return UNITLESS.has(unit) ? formatNumber(value) : `${formatNumber(value)} ${unit}`;
}

/** The headline of a result for a terminal. It may change; programs read the JSON. */
export function summarizeResult(job: Job, result: Result): string {
  const { leakage, savings, scope, systems } = result;
  const chosen = scope.options.find((option) => option.id === scope.chosen);
  const percent = (value: number) => `${formatNumber(100 * value)}`;
  const rows = [
    row("Total leakage at 25 Pa", leakage.totalCfm25, "cfm"),
    row("To outside at 25 Pa", leakage.toOutsideCfm25, "cfm"),
    ...systems.flatMap((system) =>
      (["heating", "cooling"] as const).flatMap((mode) => {
        const distribution = system.distribution[mode];
        return distribution
          ? [
              row(`${system.id}, ${mode} that arrives, before`, distribution.seasonalBefore, "%", percent),
              row(`${system.id}, ${mode} that arrives, after`, distribution.seasonalAfter, "%", percent),
            ]
          : [];
      }),
    ),
    row("Saved a year", savings.costUsdPerYear, "USD", (value) => formatUsd(value)),
    row("Carbon dioxide avoided a year", savings.co2LbPerYear, "lb"),
  ];
  const lines = [
    `${job.title}${job.isInvented ? " (invented example)" : ""}`,
    "",
    formatTable(["", "value", "unit", "8 times in 10 between"], rows, [1, 3]),
    `Verdict: ${scope.verdict.code.replaceAll("-", " ")}. ${scope.verdict.reason}`,
    ...(chosen
      ? [
          `Chosen: ${chosen.title}, ${formatUsdCents(chosen.priceUsdCents)}, leaves ${formatNumber(chosen.predictedCfm25.value)} cfm at 25 Pa.`,
        ]
      : []),
    ...result.warnings.map(({ severity, what, nextMove }) => `${capitalized(severity)}: ${what} ${nextMove}`),
    ...result.assumptions.map(
      (assumption) => `Assumed: ${assumption.title}: ${assumedValue(assumption)}. ${assumption.reason}`,
    ),
    "",
  ];
  return lines.join("\n");
}
