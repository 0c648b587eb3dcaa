"use client";

import { useState, useTransition } from "react";
import { Button } from "#app/design/button.tsx";
import { Checkbox } from "#app/design/checkbox.tsx";
import { PlainSelect } from "#app/design/plain-select.tsx";
import { QuantityField } from "#app/design/quantity-field.tsx";
import { SaveForm } from "#app/design/save-form.tsx";
import { TextField } from "#app/design/text-field.tsx";
import { saveRepair } from "./actions.ts";
import type { RepairDraft, RepairProblem } from "./repair-draft.ts";
import { PER_WORDS } from "./repair-words.ts";
import styles from "./repairs.module.css";

type PlainField = "remainingPercent" | "spreadPercent" | "easyHours" | "moderateHours" | "hardHours";

const FIELDS: readonly { name: PlainField; id: string; label: string; hint?: string; unit: string }[] = [
  {
    name: "remainingPercent",
    id: "remaining",
    label: "Leakage expected to be left, in percent",
    hint: "Of the leak as it was before.",
    unit: "%",
  },
  {
    name: "spreadPercent",
    id: "spread",
    label: "Spread from one leak to the next, in percent",
    hint: "Two of three leaks end up within this much of the figure beside it.",
    unit: "%",
  },
  { name: "easyHours", id: "easy", label: "Person hours where it is easy to reach", unit: "h" },
  { name: "moderateHours", id: "moderate", label: "Person hours where it is moderate", unit: "h" },
  { name: "hardHours", id: "hard", label: "Person hours where it is hard to reach", unit: "h" },
];

/** The figures of one repair. Saving makes the next version of all repairs; the one before stays as it was. */
export function RepairForm({
  repairId,
  onVersion,
  first,
  materials,
}: {
  repairId: string;
  onVersion: number;
  first: RepairDraft;
  materials: readonly { value: string; label: string }[];
}) {
  const [draft, setDraft] = useState(first);
  const [problems, setProblems] = useState<readonly RepairProblem[]>([]);
  const [refused, setRefused] = useState<string>();
  const [isSaving, startSaving] = useTransition();
  const errorOf = (id: string) => problems.find(({ fieldId }) => fieldId === id)?.text;
  const set = (change: Partial<RepairDraft>) => setDraft({ ...draft, ...change });
  const setMaterial = (at: number, change: Partial<RepairDraft["materials"][number]>) =>
    set({ materials: draft.materials.map((each, index) => (index === at ? { ...each, ...change } : each)) });
  const save = () =>
    startSaving(async () => {
      const reply = await saveRepair({ repairId, onVersion, draft });
      setProblems(reply.problems);
      setRefused(reply.refused);
    });

  return (
    <SaveForm
      problems={problems}
      refusal={refused}
      isSaving={isSaving}
      saveLabel="Save as a new version"
      leaveTo="/repairs"
      onSave={save}
    >
      <Checkbox
        label="Our crew offers this repair"
        checked={draft.isOffered}
        onChange={({ target }) => set({ isOffered: target.checked })}
      />
      <div className={styles.two}>
        {FIELDS.map(({ name, ...field }) => (
          <QuantityField
            key={name}
            {...field}
            value={draft[name]}
            error={errorOf(field.id)}
            onChange={({ target }) => set({ [name]: target.value })}
          />
        ))}
      </div>
      <h3>Materials</h3>
      {draft.materials.map((material, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a material may be in the list twice, and rows keep their order
        <fieldset key={index} className={styles.row}>
          <legend className={styles.hidden}>Material {index + 1}</legend>
          <PlainSelect
            label="Material"
            options={
              materials.some(({ value }) => value === material.materialId)
                ? materials
                : [
                    { value: material.materialId, label: `${material.materialId} (not in the price book)` },
                    ...materials,
                  ]
            }
            value={material.materialId}
            onChange={({ target }) => setMaterial(index, { materialId: target.value })}
          />
          <QuantityField
            id={`material-${index}`}
            label="Amount, in the unit of the price book"
            unit=""
            value={material.amount}
            error={errorOf(`material-${index}`)}
            onChange={({ target }) => setMaterial(index, { amount: target.value })}
          />
          <PlainSelect
            label="For"
            options={Object.entries(PER_WORDS).map(([value, label]) => ({ value, label }))}
            value={material.per}
            onChange={({ target }) => setMaterial(index, { per: target.value as typeof material.per })}
          />
          <Button variant="quiet" onClick={() => set({ materials: draft.materials.filter((_, at) => at !== index) })}>
            Remove<span className={styles.hidden}> material {index + 1}</span>
          </Button>
        </fieldset>
      ))}
      <Button
        variant="secondary"
        onClick={() =>
          set({ materials: [...draft.materials, { materialId: materials[0]?.value ?? "", amount: "", per: "leak" }] })
        }
      >
        Add a material
      </Button>
      <div className={styles.reason}>
        <TextField
          id="reason"
          label="Where the new figures are from"
          hint="It stands beside each changed figure and in the history."
          value={draft.reason}
          error={errorOf("reason")}
          maxLength={180}
          onChange={({ target }) => set({ reason: target.value })}
        />
      </div>
    </SaveForm>
  );
}
