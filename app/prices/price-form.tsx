"use client";

import { useState, useTransition } from "react";
import { Button } from "#app/design/button.tsx";
import { PlainSelect } from "#app/design/plain-select.tsx";
import { QuantityField } from "#app/design/quantity-field.tsx";
import { SaveForm } from "#app/design/save-form.tsx";
import { TextField } from "#app/design/text-field.tsx";
import type { PriceBook } from "#lib/job/price-book-schema.ts";
import { savePrices } from "./actions.ts";
import { emptyRow, type PriceDraft, type PriceRow } from "./price-draft.ts";
import {
  fitsColumns,
  PRICE_GROUPS,
  PRICE_LISTS,
  PRICE_UNITS,
  type PriceField,
  type PriceList,
  shortLabel,
} from "./price-fields.ts";
import { PriceSamples } from "./price-samples.tsx";
import styles from "./prices.module.css";
import { fieldIdOf, type PriceProblem, readPriceDraft } from "./read-price-draft.ts";

/** The whole price book on one page. Saving makes the next version; the one before stays as it was. */
export function PriceForm({ first, onVersion }: { first: PriceDraft; onVersion: number }) {
  const [draft, setDraft] = useState(first);
  const [problems, setProblems] = useState<readonly PriceProblem[]>([]);
  const [conflict, setConflict] = useState<string>();
  const [isSaving, startSaving] = useTransition();
  const read = readPriceDraft(draft);
  const errorOf = (id: string) => problems.find(({ fieldId }) => fieldId === id)?.text;
  const setList = (id: PriceList["id"], rows: readonly PriceRow[]) =>
    setDraft({ ...draft, lists: { ...draft.lists, [id]: rows } });

  const save = () =>
    startSaving(async () => {
      const reply = await savePrices({ draft, onVersion });
      setProblems(reply.problems);
      setConflict(reply.conflict);
    });

  return (
    <SaveForm
      problems={problems}
      refusal={conflict}
      isSaving={isSaving}
      saveLabel="Save as a new version"
      leaveTo="/prices"
      onSave={save}
    >
      <div className={styles.two}>
        <TextField
          id="title"
          label="Name of the price book"
          value={draft.title}
          error={errorOf("title")}
          onChange={({ target }) => setDraft({ ...draft, title: target.value })}
        />
        <TextField
          id="effectiveOn"
          label="In force from"
          hint="Year, month and day, such as 2027-01-15. Until then the version before it holds."
          value={draft.effectiveOn}
          error={errorOf("effectiveOn")}
          inputMode="numeric"
          onChange={({ target }) => setDraft({ ...draft, effectiveOn: target.value })}
        />
      </div>
      {PRICE_GROUPS.map(({ title, reason, fields }) => (
        <section key={title}>
          <h2>{title}</h2>
          <p className={styles.reason}>{reason}</p>
          <div className={styles.two}>
            {fields.map((field) => {
              const id = fieldIdOf(field.name);
              return (
                <Entry
                  key={field.name}
                  field={field}
                  id={id}
                  text={draft.fields[field.name] ?? ""}
                  error={errorOf(id)}
                  onText={(text) => setDraft({ ...draft, fields: { ...draft.fields, [field.name]: text } })}
                />
              );
            })}
          </div>
        </section>
      ))}
      {PRICE_LISTS.map((list) => (
        <Rows key={list.id} list={list} rows={draft.lists[list.id]} setRows={setList} errorOf={errorOf} />
      ))}
      <section aria-live="polite">
        <h2>What it comes to</h2>
        {"book" in read ? (
          <PriceSamples book={{ ...read.book, id: "draft", versionId: "draft" } satisfies PriceBook} />
        ) : (
          <p>Shown once every field holds a value.</p>
        )}
      </section>
    </SaveForm>
  );
}

function Rows({
  list,
  rows,
  setRows,
  errorOf,
}: {
  list: PriceList;
  rows: readonly PriceRow[];
  setRows: (id: PriceList["id"], rows: readonly PriceRow[]) => void;
  errorOf: (id: string) => string | undefined;
}) {
  const { id: listId, title, reason, entry, addLabel, fields } = list;
  const nameOf = (row: PriceRow, index: number) => row.title || `${entry} ${index + 1}`;
  const isCard = !fitsColumns(list);
  return (
    <section>
      <h2>{title}</h2>
      <p className={styles.reason}>{reason}</p>
      {isCard || rows.length === 0 ? null : (
        <div className={styles.heads} aria-hidden="true">
          {fields.map((field) => (
            <span key={field.name}>{shortLabel(field)}</span>
          ))}
        </div>
      )}
      {rows.map((row, index) => (
        <fieldset
          key={row.id ?? index}
          className={isCard ? `${styles.row} ${styles.card}` : `${styles.row} ${styles.columns}`}
        >
          <legend className={styles.hidden}>{nameOf(row, index)}</legend>
          {fields.map((field) => {
            const id = fieldIdOf(listId, index, field.name);
            return (
              <Entry
                key={field.name}
                field={field}
                id={id}
                text={row[field.name] ?? ""}
                error={errorOf(id)}
                onText={(text) =>
                  setRows(
                    listId,
                    rows.map((each, at) => (at === index ? { ...each, [field.name]: text } : each)),
                  )
                }
              />
            );
          })}
          <Button
            variant="quiet"
            className={styles.remove}
            onClick={() =>
              setRows(
                listId,
                rows.filter((_, at) => at !== index),
              )
            }
          >
            Remove<span className={styles.hidden}> {nameOf(row, index)}</span>
          </Button>
        </fieldset>
      ))}
      <Button variant="secondary" onClick={() => setRows(listId, [...rows, emptyRow(fields)])}>
        {addLabel}
      </Button>
    </section>
  );
}

function Entry({
  field: { label, hint, kind, isOptional, options },
  id,
  text,
  error,
  onText,
}: {
  field: PriceField;
  id: string;
  text: string;
  error: string | undefined;
  onText: (text: string) => void;
}) {
  const shared = {
    id,
    label,
    hint,
    error,
    isOptional,
    value: text,
    onChange: ({ target }: { target: { value: string } }) => onText(target.value),
  };
  if (kind === "choice") return <PlainSelect {...shared} options={options ?? []} />;
  if (kind === "text") return <TextField {...shared} />;
  return <QuantityField {...shared} unit={PRICE_UNITS[kind]} />;
}
