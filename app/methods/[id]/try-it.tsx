import { Button } from "#app/design/button.tsx";
import { DataTable } from "#app/design/data-table.tsx";
import { Notice } from "#app/design/notice.tsx";
import { QuantityField } from "#app/design/quantity-field.tsx";
import { TextArea, TextField } from "#app/design/text-field.tsx";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { type FormField, formFields, inputOfTexts } from "#lib/methods/form-fields.ts";
import type { MethodCard } from "#lib/methods/method-card.ts";
import { type MethodResult, runCard } from "#lib/methods/run-method.ts";
import { formatNumber } from "#lib/units/format.ts";
import styles from "../methods.module.css";

type Texts = Readonly<Record<string, string | undefined>>;

function Field({ field, text, error }: { field: FormField; text: string; error?: string }) {
  const hint =
    [field.description, field.standIn && `Left empty: ${field.standIn}`].filter(Boolean).join(" ") || undefined;
  const common = {
    name: field.name,
    label: field.title,
    hint,
    error,
    isOptional: field.isOptional,
    defaultValue: text,
  };
  if (field.kind === "number")
    return (
      <QuantityField {...common} unit={field.unit === "ratio" || field.unit === "share" ? "" : (field.unit ?? "")} />
    );
  if (field.kind === "choice")
    return <TextField {...common} hint={`${hint ?? ""} One of: ${field.choices.join(", ")}.`} />;
  return (
    <div className={styles.wide}>
      <TextArea {...common} hint={`${hint ?? ""} As JSON.`} rows={5} />
    </div>
  );
}

/** Every number of an output, with its path; lists beyond a dozen rows are cut and said so. */
function outputRows(value: unknown, path: string): { id: string; cells: [string, string] }[] {
  if (typeof value === "number") return [{ id: path, cells: [path, formatNumber(value, { significantDigits: 6 })] }];
  if (typeof value === "string" || typeof value === "boolean" || value === null)
    return [{ id: path, cells: [path, String(value)] }];
  return Object.entries(value as object).flatMap(([key, each]) => outputRows(each, path ? `${path}/${key}` : key));
}

function answer(card: MethodCard, input: Record<string, unknown>): { result?: MethodResult; problem?: InputProblem } {
  try {
    return { result: runCard(card, input) };
  } catch (thrown) {
    if (thrown instanceof InputProblem) return { problem: thrown };
    throw thrown;
  }
}

/** A method's live form. It is a plain GET form: an address holds its inputs, and it works without script. */
export function TryIt({ card, texts }: { card: MethodCard; texts: Record<string, string | string[] | undefined> }) {
  const fields = formFields(card);
  const given: Texts = Object.fromEntries(
    Object.entries(texts).map(([name, text]) => [name, Array.isArray(text) ? text[0] : text]),
  );
  const isAsked = fields.some(({ name }) => given[name] !== undefined);
  const example = (card.checks[0]?.input ?? {}) as Record<string, unknown>;
  const textOf = ({ name, kind }: FormField) => {
    if (isAsked) return given[name] ?? "";
    const value = example[name];
    return value === undefined ? "" : kind === "list" ? JSON.stringify(value) : String(value);
  };
  const { result, problem } = answer(card, isAsked ? inputOfTexts(fields, given) : example);
  const titleOf = (path: string) => fields.find(({ name }) => path === `#/${name}`)?.title ?? path.replace(/^#\//, "");
  const errorOf = (name: string) =>
    problem?.errors.find(({ pointer }) => pointer === `#/${name}` || pointer.startsWith(`#/${name}/`));
  return (
    <>
      <form className={styles.form} method="get" noValidate>
        {fields.map((field) => {
          const error = errorOf(field.name);
          return (
            <Field
              key={field.name}
              field={field}
              text={textOf(field)}
              error={error && `${error.detail}. ${error.fix}`}
            />
          );
        })}
        <div className={styles.wide}>
          <Button type="submit">Calculate</Button>
        </div>
      </form>
      <div className={styles.result}>
        {problem && (
          <Notice kind="problem" title="There is no answer for these values">
            {problem.errors.map((each) => (
              <p key={each.pointer}>
                {each.detail}. {each.fix}
              </p>
            ))}
          </Notice>
        )}
        {result && (
          <DataTable
            caption={isAsked ? "The answer" : "The answer for the first published case"}
            columns={[{ label: "Number" }, { label: "Value", isNumeric: true }]}
            rows={outputRows(result.output, "").slice(0, 60)}
          />
        )}
        {result && result.assumptions.length > 0 && (
          <DataTable
            caption="Assumed, because it was left out"
            isCardsWhenNarrow
            columns={[{ label: "Input" }, { label: "Value", isNumeric: true }, { label: "Why" }]}
            rows={result.assumptions.map(({ path, value, unit, reason }) => ({
              id: path,
              cells: [titleOf(path), `${value} ${unit === "count" ? "" : unit}`.trim(), reason],
            }))}
          />
        )}
      </div>
    </>
  );
}
