import { type ComponentProps, type ReactNode, useId } from "react";
import styles from "./field.module.css";
import { type FieldTexts, fieldIds } from "./field-frame.tsx";

export interface Choice {
  value: string;
  label: ReactNode;
  hint?: ReactNode;
  isDisabled?: boolean;
}

type RadioProps = Pick<ComponentProps<"input">, "onChange" | "required">;

/**
 * One answer out of a few, each as a card a thumb can hit. Native radio buttons: arrow keys, forms and pages without
 * script all work.
 */
export function ChoiceCards({
  label,
  hint,
  error,
  note,
  isNoteQuiet = false,
  isOptional,
  name,
  choices,
  value,
  defaultValue,
  isRow = false,
  ...radio
}: FieldTexts &
  RadioProps & { name: string; choices: readonly Choice[]; value?: string; defaultValue?: string; isRow?: boolean }) {
  const id = useId();
  const { hintId, errorId, noteId, describedBy } = fieldIds(id, { hint, error, note });
  return (
    <fieldset className={error ? `${styles.field} ${styles.wrong}` : styles.field} aria-describedby={describedBy}>
      <legend className={styles.label}>
        {label}
        {isOptional ? <span className={styles.optional}> (optional)</span> : null}
      </legend>
      {hint ? (
        <p id={hintId} className={styles.hint}>
          {hint}
        </p>
      ) : null}
      {error ? (
        <p id={errorId} className={styles.error}>
          <span className={styles.errorSign} aria-hidden="true">
            !
          </span>
          <span>{error}</span>
        </p>
      ) : null}
      <div className={isRow ? `${styles.choices} ${styles.row}` : styles.choices}>
        {choices.map((choice) => (
          <label key={choice.value} className={styles.choice}>
            <input
              type="radio"
              className={styles.mark}
              name={name}
              value={choice.value}
              disabled={choice.isDisabled}
              {...(value !== undefined
                ? { checked: value === choice.value }
                : { defaultChecked: defaultValue === choice.value })}
              {...(value !== undefined && !radio.onChange ? { readOnly: true } : {})}
              {...radio}
            />
            <span className={styles.choiceText}>
              <span>{choice.label}</span>
              {choice.hint ? <span className={styles.choiceHint}>{choice.hint}</span> : null}
            </span>
          </label>
        ))}
      </div>
      {note ? (
        <p id={noteId} className={styles.note} aria-live={isNoteQuiet ? undefined : "polite"}>
          {note}
        </p>
      ) : null}
    </fieldset>
  );
}
