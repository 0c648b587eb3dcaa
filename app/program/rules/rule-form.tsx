import Form from "next/form";
import type { ReactNode } from "react";
import { Button } from "#app/design/button.tsx";
import { Checkbox } from "#app/design/checkbox.tsx";
import { PlainSelect } from "#app/design/plain-select.tsx";
import { TextField } from "#app/design/text-field.tsx";
import { DEEMED_RULES } from "#lib/savings/deemed-rules.ts";
import styles from "../program.module.css";
import type { RuleDraft } from "./rule-draft.ts";

const HOUSES = [
  ["site-built", "Built on site"],
  ["manufactured", "Manufactured"],
  ["multifamily", "Several units"],
] as const;
const TESTS = [
  ["total-leakage", "Total leakage"],
  ["leakage-to-outside", "Leakage to outside"],
  ["blower-door-subtraction", "Blower-door subtraction"],
] as const;
const NEEDS = [
  ["instruments", "Instruments with their calibration dates"],
  ["names", "Who tested"],
] as const;
export const SIZES = [
  ["1000", "A sample of 1,000"],
  ["5000", "A sample of 5,000"],
  ["all", "Every claim"],
] as const;

const options = (pairs: readonly (readonly [string, string])[]) => pairs.map(([value, label]) => ({ value, label }));

function Group({ title, children }: { title: string; children: ReactNode }) {
  return (
    <fieldset className={styles.group}>
      <legend>{title}</legend>
      <div className={styles.filters}>{children}</div>
    </fieldset>
  );
}

function Boxes({
  name,
  pairs,
  ticked,
}: {
  name: string;
  pairs: readonly (readonly [string, string])[];
  ticked: readonly string[];
}) {
  return pairs.map(([value, label]) => (
    <Checkbox key={value} name={name} value={value} label={label} defaultChecked={ticked.includes(value)} />
  ));
}

/** Every figure of a rule. Sending it only tries it: the address holds what was tried. */
export function RuleForm({ draft, size }: { draft: RuleDraft; size: string }) {
  const text = (label: string, name: keyof RuleDraft, inputMode: "decimal" | "numeric" | "text" = "decimal") => (
    <TextField label={label} name={name} inputMode={inputMode} defaultValue={draft[name]} autoComplete="off" />
  );
  const choice = (label: string, name: "paysBy" | "measure", pairs: Parameters<typeof options>[0]) => (
    <PlainSelect label={label} name={name} defaultValue={draft[name]} options={options(pairs)} />
  );
  return (
    <Form action="/program/rules">
      <input type="hidden" name="tried" value="yes" />
      <Group title="Rebate">
        {choice("Paid by", "paysBy", [
          ["cfm25-removed", "Leakage removed"],
          ["flat", "Flat amount"],
        ])}
        {text("Dollars for each cfm at 25 Pa removed", "eachUsd")}
        {text("Flat amount, in dollars", "flatUsd")}
        {text("At most, in dollars", "mostUsd")}
      </Group>
      <Group title="What the retest has to show">
        {choice("Leakage that counts", "measure", [
          ["total", "Total"],
          ["to-outside", "To outside"],
        ])}
        {text("Removed at least, in percent", "leastPercent")}
        {text("Removed at least, in cfm at 25 Pa", "leastCfm")}
        {text("Left at most, in cfm at 25 Pa", "mostLeftCfm")}
        {text("Other conditions, in words", "conditionText", "text")}
      </Group>
      <Group title="Houses that may take part">
        <Boxes name="houseKinds" pairs={HOUSES} ticked={draft.houseKinds} />
      </Group>
      <Group title="Tests that count after the work">
        <Boxes name="testKinds" pairs={TESTS} ticked={draft.testKinds} />
      </Group>
      <Group title="Evidence">
        {text("Photos of each repair", "photos", "numeric")}
        <Boxes name="needs" pairs={NEEDS} ticked={draft.needs} />
      </Group>
      <Group title="Savings and inspections">
        <PlainSelect
          label="Deemed savings"
          name="deemedRuleId"
          defaultValue={draft.deemedRuleId}
          options={[
            { value: "", label: "None" },
            ...DEEMED_RULES.map(({ id, title, edition }) => ({ value: id, label: `${title}, ${edition}` })),
          ]}
        />
        {text("Measure life, in years", "lifeYears")}
        {text("Net to gross", "netToGross")}
        {text("Inspections: confidence, in percent", "confidencePercent")}
        {text("Inspections: precision, in percent", "precisionPercent")}
      </Group>
      <Group title="Try it">
        {text("Title of the edition", "title", "text")}
        <PlainSelect label="Over" name="size" defaultValue={size} options={options(SIZES)} />
        <Button type="submit">Try it</Button>
      </Group>
    </Form>
  );
}
