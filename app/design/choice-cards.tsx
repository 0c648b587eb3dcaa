import { type ComponentProps, type ReactNode, useId } from "react";
import styles from "./field.module.css";
import { FieldNote, type FieldTexts, fieldIds, HintAndError, Optional } from "./field-frame.tsx";

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
  const { describedBy } = fieldIds(id, { hint, error, note });
  return (
    <fieldset className={error ? `${styles.field} ${styles.wrong}` : styles.field} aria-describedby={describedBy}>
      <legend className={styles.label}>
        {label}
        <Optional isOptional={isOptional} />
      </legend>
      <HintAndError id={id} hint={hint} error={error} />
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
      <FieldNote id={id} note={note} isNoteQuiet={isNoteQuiet} />
    </fieldset>
  );
}
