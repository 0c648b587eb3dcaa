import Link from "next/link";
import { DataTable } from "#app/design/data-table.tsx";
import { WorkedOut } from "#app/design/worked-out.tsx";
import { WithTerms } from "#app/words/with-terms.tsx";
import type { Result } from "#lib/job/result/result-schema.ts";
import { METHODS } from "#lib/methods/catalogue.ts";
import { citationText } from "#lib/sources/source-title.ts";
import { formatNumber, formatPercent, formatUsd, formatUsdCents } from "#lib/units/format.ts";
import { sentenceInSystem } from "#lib/units/sentence-in-system.ts";
import { unitOfName } from "#lib/units/unit-of-name.ts";
import { type UnitText, unitText } from "#lib/units/unit-text.ts";
import { sayValue } from "../../trip/said-value.ts";

const METHOD_BY_ID = new Map(METHODS.map((method) => [method.id, method]));

/** A value of the calculation by its name there, whose ending tells the unit; so it stays in that unit. */
function namedValue(name: string, value: number | string | boolean | null): { value: string; unit: string } {
  const unit = unitOfName(lastNameOf(name)) ?? "";
  if (value === null) return { value: "none", unit: "" };
  if (typeof value === "number" && unit !== "yr") {
    return { value: formatNumber(value, { significantDigits: 4 }), unit: SILENT_UNITS.has(unit) ? "" : unit };
  }
  return { value: sayValue({ path: name, value, unit }, unitText("us")), unit: "" };
}

const SILENT_UNITS = new Set(["ratio", "share", "count"]);
const lastNameOf = (path: string): string => path.slice(path.lastIndexOf("/") + 1);

/** Scopes that can be had, side by side. */
export function OptionsTable({ scope, text }: { scope: Result["scope"]; text: UnitText }) {
  if (scope.options.length === 0) return <p>No leak was found that is worth its repair.</p>;
  return (
    <DataTable
      caption="Options side by side"
      isCaptionHidden
      isCardsWhenNarrow
      columns={[
        { label: "Option" },
        { label: "Price", isNumeric: true },
        { label: "Hours", isNumeric: true },
        { label: `Leaves, ${text.unit("cfm")} at 25 Pa`, isNumeric: true },
        { label: "Reaches the target", isNumeric: true },
        { label: "Saves a year", isNumeric: true },
      ]}
      rows={scope.options.map((option) => ({
        id: option.id,
        cells: [
          option.id === scope.chosen ? <strong key="title">{option.title} (chosen)</strong> : option.title,
          formatUsdCents(option.priceUsdCents),
          formatNumber(option.labourHours),
          text.number(option.predictedCfm25.value, "cfm"),
          option.probabilityOfReachingTarget === null ? "" : formatPercent(option.probabilityOfReachingTarget),
          formatUsd(option.savedUsdPerYear.value),
        ],
      }))}
    />
  );
}

/** The very numbers that the retest has to show. */
export function RetestTable({ retest, text }: { retest: NonNullable<Result["retest"]>; text: UnitText }) {
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
              text.quantity(retest.limitCfm25, "cfm"),
              text.quantity(retest.acceptanceCfm25, "cfm"),
            ],
          },
          ...restrictors,
        ]}
      />
      <ol>
        {retest.stagedChecks.map((check) => (
          <li key={check.say}>
            <WithTerms>{sentenceInSystem(check.say, text.system)}</WithTerms>
          </li>
        ))}
      </ol>
    </>
  );
}

const FUEL_WORDS = { electricity: "electricity", naturalGas: "gas", propane: "propane", fuelOil: "oil" } as const;
const EVIDENCE_WORDS = { bills: "Bills", "known-use": "Known yearly use", building: "The building" } as const;

/** What is known of the year's need: every evidence side by side, the one in use marked. */
export function LoadsTable({ loads, text }: { loads: Result["loads"]; text: UnitText }) {
  const baseUse = loads.bills.flatMap(({ fuel, baseUse: use, unit }) =>
    use === null ? [] : [`${text.quantity(use, unit)} of ${FUEL_WORDS[fuel]}`],
  );
  return (
    <>
      <DataTable
        caption="Use of a normal year without the blower, by each evidence"
        columns={[
          { label: "Season" },
          { label: "Evidence" },
          { label: "Use a year", isNumeric: true },
          { label: "8 times in 10 between", isNumeric: true },
          { label: `Need of the rooms, ${text.unit("million Btu")}`, isNumeric: true },
          { label: "From" },
        ]}
        rows={loads.seasons.flatMap(({ mode, fuel, evidence }) =>
          evidence.map(({ from, isUsed, value, unit, low, high, needBtu, detail }) => ({
            id: `${mode} ${fuel} ${from}`,
            cells: [
              mode === "heating" ? `Heating, ${FUEL_WORDS[fuel]}` : "Cooling",
              isUsed ? <strong key="from">{EVIDENCE_WORDS[from]} (used)</strong> : EVIDENCE_WORDS[from],
              text.quantity(value, unit),
              `${text.number(low, unit)} to ${text.number(high, unit)}`,
              text.number(needBtu / 1e6, "million Btu"),
              sentenceInSystem(detail, text.system),
            ],
          })),
        )}
      />
      {baseUse.length > 0 ? (
        <p>Of the bills, {baseUse.join(" and ")} a year does not follow the weather and is left alone.</p>
      ) : null}
    </>
  );
}

export function ComplianceTable({ compliance, text }: { compliance: Result["compliance"]; text: UnitText }) {
  const unit = text.unit("cfm");
  return (
    <DataTable
      caption="Rules, with two statements each: met, and met with confidence"
      isCardsWhenNarrow
      columns={[
        { label: "Rule" },
        { label: `Limit, ${unit}`, isNumeric: true },
        { label: `Found, ${unit}`, isNumeric: true },
        { label: "Meets it" },
        { label: "With confidence" },
        { label: `Expected after, ${unit}`, isNumeric: true },
      ]}
      rows={compliance.map((rule) => ({
        id: rule.ruleId,
        cells: [
          rule.title,
          text.number(rule.limitCfm25, "cfm"),
          text.number(rule.valueCfm25, "cfm"),
          rule.meetsRule ? "yes" : "no",
          rule.meetsWithConfidence ? "yes" : "no",
          text.number(rule.predictedAfterCfm25, "cfm"),
        ],
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
                ...(first ? namedValue(...first) : { value: "", unit: "" }),
                equation: method?.equation ?? step.methodId,
                inputs: [
                  ...Object.entries(step.inputs),
                  ...others.map(([key, value]) => [`→ ${key}`, value] as const),
                ].map(([label, value]) => ({ label, ...namedValue(label, value) })),
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
