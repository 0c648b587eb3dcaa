"use client";

import { type ReactNode, useState } from "react";
import { ChoiceCards } from "#app/design/choice-cards.tsx";
import { PlainSelect } from "#app/design/plain-select.tsx";
import { QuantityField } from "#app/design/quantity-field.tsx";
import { Term } from "#app/design/term.tsx";
import { TextField } from "#app/design/text-field.tsx";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import { sentenceInSystem } from "#lib/units/sentence-in-system.ts";
import { numberAt, readAt, textAt } from "./draft.ts";
import { choiceLabel, SHORT_UNITS, UNIT_WORDS } from "./field-words.ts";
import { hintWithTerms } from "./hint-with-terms.tsx";
import { shownUnit, storedNumber, typedText } from "./shown-number.ts";
import styles from "./trip.module.css";
import { lastKeyOf, starPathOf, useTrip } from "./trip-context.ts";

interface FieldProps {
  path: string;
  label?: string;
  hint?: ReactNode;
  isLabelHidden?: boolean;
}

/**
 * What stands in for a field left empty, said before it is used. Its two lines are kept while it is not known yet and
 * when the field is filled in, so that no answer pushes down what one is about to press.
 */
function useStandIn(path: string, { isEmpty, mayBeEmpty }: { isEmpty: boolean; mayBeEmpty: boolean }): ReactNode {
  const { answer } = useTrip();
  const assumed = answer?.assumptions[path];
  if (!mayBeEmpty && !assumed) return undefined;
  return (
    <span className={styles.standIn}>
      {isEmpty && assumed ? (
        <>
          <span className={styles.assumed}>Left empty: {assumed.text}.</span> {assumed.effect}{" "}
          <Term meaning={assumed.reason} label="Why this stands in">
            Why
          </Term>
        </>
      ) : isEmpty && answer ? (
        "Left empty: the answer does without it."
      ) : null}
    </span>
  );
}

/** The end of a label that names the unit in words; the words of the person's own unit stand in its place. */
const UNIT_IN_WORDS = /, in [a-z ]+$/;

/** In the units of the reader, with what its trade terms mean. */
const hintIn = (units: UnitSystem, { hint, ...field }: { path: string; label: string; hint: ReactNode }): ReactNode =>
  hintWithTerms({ ...field, hint: typeof hint === "string" ? sentenceInSystem(hint, units) : hint });

/** What was typed, below zero where it was above, and back. */
const withOtherSign = (typed: string): string =>
  /^\s*[−–-]/u.test(typed) ? typed.replace(/^\s*[−–-]\s*/u, "") : `-${typed.trim()}`;

/** A number with its unit; empty means "I don't know". */
export function NumberAt({
  path,
  label,
  hint,
  isLabelHidden,
  isLarge,
  isSigned = false,
  onNumber,
}: FieldProps & {
  isLarge?: boolean;
  /** Below zero is as usual as above. */
  isSigned?: boolean;
  /** Stores the number in another way than under its own path alone. */
  onNumber?: (value: number | undefined) => void;
}) {
  const { draft, units, set, setUnreadable, unreadable, specOf, errorAt } = useTrip();
  const spec = specOf(path);
  const field = { key: lastKeyOf(path), unit: spec.unit, system: units };
  const unit = shownUnit(field);
  const value = numberAt(draft, path);
  const [text, setText] = useState(unreadable[path] ?? typedText(value, field));
  const isEmpty = text.trim() === "";
  const words = UNIT_WORDS[unit];
  const note = useStandIn(path, { isEmpty, mayBeEmpty: !spec.isRequired });
  const title = sentenceInSystem((label ?? spec.title).replace(UNIT_IN_WORDS, ""), units);
  const take = (typed: string) => {
    setText(typed);
    const stored = storedNumber(typed, field);
    const isUnreadable = typed.trim() !== "" && stored === undefined;
    setUnreadable(path, isUnreadable ? typed : undefined);
    if (onNumber) onNumber(stored);
    else set(path, stored);
  };
  return (
    <QuantityField
      id={path}
      label={words ? `${title}, ${words}` : title}
      hint={
        isLabelHidden ? hint : hintIn(units, { path, label: title, hint: hint === undefined ? spec.description : hint })
      }
      error={errorAt(path)}
      note={isLabelHidden ? undefined : note}
      isNoteQuiet
      isOptional={!spec.isRequired && !isLabelHidden}
      isLabelHidden={isLabelHidden}
      isLarge={isLarge}
      unit={SHORT_UNITS[unit] ?? unit}
      value={text}
      onSign={isSigned ? () => take(withOtherSign(text)) : undefined}
      onChange={(event) => take(event.currentTarget.value)}
    />
  );
}

export function TextAt({
  path,
  label,
  hint,
  isLabelHidden,
  inputMode,
  isNeeded = false,
}: FieldProps & {
  inputMode?: "numeric";
  /** The schema can do without it, this job cannot. */
  isNeeded?: boolean;
}) {
  const { draft, set, specOf, errorAt } = useTrip();
  const spec = specOf(path);
  return (
    <TextField
      id={path}
      label={label ?? spec.title}
      hint={hint === undefined ? spec.description : hint}
      error={errorAt(path)}
      isOptional={!spec.isRequired && !isNeeded && !isLabelHidden}
      isLabelHidden={isLabelHidden}
      inputMode={inputMode}
      autoComplete="off"
      value={textAt(draft, path) ?? ""}
      onChange={(event) => {
        const typed = event.currentTarget.value;
        set(path, typed.trim() === "" ? undefined : typed);
      }}
    />
  );
}

const MOST_CARDS = 5;
const UNKNOWN = "";

/** One of the choices of the schema: as cards where they are few, else as a list. */
export function ChoiceAt({
  path,
  label,
  hint,
  isLabelHidden,
  isRow,
  options,
  isRequired,
  unknownLabel = "I don’t know",
  onChosen,
}: FieldProps & {
  isRow?: boolean;
  /** Other choices than the schema's, such as the places of this house. */
  options?: readonly { value: string; label: string }[];
  isRequired?: boolean;
  unknownLabel?: string;
  onChosen?: (value: string | undefined) => void;
}) {
  const { draft, units, set, specOf, errorAt } = useTrip();
  const spec = specOf(path);
  const starPath = starPathOf(path);
  const mustChoose = isRequired ?? spec.isRequired;
  const known = options ?? (spec.choices ?? []).map((value) => ({ value, label: choiceLabel(starPath, value) }));
  const value = textAt(draft, path) ?? UNKNOWN;
  const note = useStandIn(path, { isEmpty: value === UNKNOWN, mayBeEmpty: !mustChoose });
  const choose = (chosen: string) => {
    const next = chosen === UNKNOWN ? undefined : chosen;
    if (onChosen) onChosen(next);
    else set(path, next);
  };
  const texts = {
    label: label ?? spec.title,
    hint: isLabelHidden
      ? hint
      : hintIn(units, { path, label: label ?? spec.title, hint: hint === undefined ? spec.description : hint }),
    error: errorAt(path),
    note,
    isNoteQuiet: true,
  };
  if (isLabelHidden || known.length > MOST_CARDS || options) {
    const first = mustChoose ? (value === UNKNOWN ? [{ value: UNKNOWN, label: "Choose one" }] : []) : [];
    const unknown = mustChoose ? [] : [{ value: UNKNOWN, label: unknownLabel }];
    return (
      <PlainSelect
        id={path}
        {...texts}
        note={isLabelHidden ? undefined : note}
        isLabelHidden={isLabelHidden}
        options={[...first, ...unknown, ...known]}
        value={value}
        onChange={(event) => choose(event.currentTarget.value)}
      />
    );
  }
  return (
    <div id={path} tabIndex={-1} className={styles.anchor}>
      <ChoiceCards
        {...texts}
        name={path}
        isRow={isRow}
        choices={[...known, ...(mustChoose ? [] : [{ value: UNKNOWN, label: unknownLabel }])]}
        value={value}
        onChange={(event) => choose(event.currentTarget.value)}
      />
    </div>
  );
}

/** Yes, no, or not known. */
export function FlagAt({ path, label, hint }: FieldProps) {
  const { draft, units, set, specOf, errorAt } = useTrip();
  const spec = specOf(path);
  const value = readAt(draft, path);
  const note = useStandIn(path, { isEmpty: value === undefined, mayBeEmpty: true });
  return (
    <div id={path} tabIndex={-1} className={styles.anchor}>
      <ChoiceCards
        label={label ?? spec.title}
        hint={hintIn(units, { path, label: label ?? spec.title, hint: hint === undefined ? spec.description : hint })}
        error={errorAt(path)}
        note={note}
        isNoteQuiet
        name={path}
        isRow
        choices={[
          { value: "yes", label: "Yes" },
          { value: "no", label: "No" },
          { value: "unknown", label: "I don’t know" },
        ]}
        value={value === true ? "yes" : value === false ? "no" : "unknown"}
        onChange={(event) => {
          const chosen = event.currentTarget.value;
          set(path, chosen === "unknown" ? undefined : chosen === "yes");
        }}
      />
    </div>
  );
}
