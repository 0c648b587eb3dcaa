import Link from "next/link";
import { DataTable } from "#app/design/data-table.tsx";
import { WorkedOut } from "#app/design/worked-out.tsx";
import type { Result } from "#lib/job/result/result-schema.ts";
import { METHODS } from "#lib/methods/catalogue.ts";
import { citationText } from "#lib/sources/source-title.ts";
import { formatNumber, formatPercent, formatUsd, formatUsdCents } from "#lib/units/format.ts";

const METHOD_BY_ID = new Map(METHODS.map((method) => [method.id, method]));

const shown = (value: number | string | boolean | null): string =>
  typeof value === "number" ? formatNumber(value, { significantDigits: 4 }) : String(value ?? "");

/** Scopes that can be had, side by side. */
export function OptionsTable({ scope }: { scope: Result["scope"] }) {
  if (scope.options.length === 0) return <p>No leak was found that is worth its repair.</p>;
  return (
    <DataTable
      caption="Options side by side"
      isCaptionHidden
      columns={[
        { label: "Option" },
        { label: "Price", isNumeric: true },
        { label: "Hours", isNumeric: true },
        { label: "Leaves, cfm at 25 Pa", isNumeric: true },
        { label: "Reaches the target", isNumeric: true },
        { label: "Saves a year", isNumeric: true },
      ]}
      rows={scope.options.map((option) => ({
        id: option.id,
        cells: [
          option.id === scope.chosen ? <strong key="title">{option.title} (chosen)</strong> : option.title,
          formatUsdCents(option.priceUsdCents),
          formatNumber(option.labourHours),
          formatNumber(option.predictedCfm25.value),
          option.probabilityOfReachingTarget === null ? "" : formatPercent(option.probabilityOfReachingTarget),
          formatUsd(option.savedUsdPerYear.value),
        ],
      }))}
    />
  );
}

/** The very numbers that the retest has to show. */
export function RetestTable({ retest }: { retest: NonNullable<Result["retest"]> }) {
  const restrictors = retest.readings.map((reading) => ({
    id: `${reading.restrictorId} ${reading.direction}`,
    cells: [
      `Fan pressure with the ${reading.title}, ${reading.direction}`,
      `${formatNumber(reading.fanPressureAtLimitPa)} Pa`,
      `${formatNumber(reading.fanPressureAtAcceptancePa)} Pa`,
    ],
  }));
  return (
    <>
      <DataTable
        caption={`${retest.target}: what the retest must show`}
        columns={[
          { label: "Number" },
          { label: "Meets the rule", isNumeric: true },
          { label: "With confidence", isNumeric: true },
        ]}
        rows={[
          {
            id: "leakage",
            cells: [
              "Leakage at 25 Pa, at most",
              `${formatNumber(retest.limitCfm25)} cfm`,
              `${formatNumber(retest.acceptanceCfm25)} cfm`,
            ],
          },
          ...restrictors,
        ]}
      />
      <ol>
        {retest.stagedChecks.map((check) => (
          <li key={check.say}>{check.say}</li>
        ))}
      </ol>
    </>
  );
}

export function ComplianceTable({ compliance }: { compliance: Result["compliance"] }) {
  return (
    <DataTable
      caption="Rules, with two statements each: met, and met with confidence"
      columns={[
        { label: "Rule" },
        { label: "Limit, cfm", isNumeric: true },
        { label: "Found, cfm", isNumeric: true },
        { label: "Meets it" },
        { label: "With confidence" },
        { label: "Expected after, cfm", isNumeric: true },
      ]}
      rows={compliance.map((rule) => ({
        id: rule.ruleId,
        cells: [
          rule.title,
          formatNumber(rule.limitCfm25),
          formatNumber(rule.valueCfm25),
          rule.meetsRule ? "yes" : "no",
          rule.meetsWithConfidence ? "yes" : "no",
          formatNumber(rule.predictedAfterCfm25),
        ],
      }))}
    />
  );
}

/** Every assumed value with its reason and source. */
export function AssumptionsTable({ assumptions }: { assumptions: Result["assumptions"] }) {
  return (
    <DataTable
      caption="Assumed values"
      isCaptionHidden
      columns={[{ label: "What" }, { label: "Value", isNumeric: true }, { label: "Why" }, { label: "Source" }]}
      rows={assumptions.map((each) => ({
        id: each.path,
        cells: [each.title, `${shown(each.value)} ${each.unit}`.trim(), each.reason, citationText(each.source)],
      }))}
    />
  );
}

/** The steps of the calculation, each with its equation, inputs and source. */
export function TraceSteps({ trace }: { trace: Result["trace"] }) {
  return (
    <>
      {trace.map((step) => {
        const method = METHOD_BY_ID.get(step.methodId);
        const [first, ...others] = Object.entries(step.outputs);
        return (
          <WorkedOut
            key={step.id}
            title={step.title}
            steps={[
              {
                id: step.id,
                label: first?.[0] ?? step.title,
                value: first ? shown(first[1]) : "",
                unit: "",
                equation: method?.equation ?? step.methodId,
                inputs: [
                  ...Object.entries(step.inputs),
                  ...others.map(([key, value]) => [`→ ${key}`, value] as const),
                ].map(([label, value]) => ({ label, value: shown(value), unit: "" })),
                source: (
                  <>
                    {citationText(step.source)}.{" "}
                    {method ? <Link href={`/methods/${method.id}`}>{method.title}</Link> : null}
                  </>
                ),
              },
            ]}
          />
        );
      })}
    </>
  );
}
