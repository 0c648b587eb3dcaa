import { type ComponentProps, useId } from "react";
import styles from "./field.module.css";
import { FieldFrame, type FieldTexts, fieldIds } from "./field-frame.tsx";

/**
 * One answer out of many, as the browser's own list: a phone shows its own wheel, forms work without script, and a page
 * of twenty of them costs nothing. `Select` is for lists whose entries need more than one line.
 */
export function PlainSelect({
  label,
  hint,
  error,
  note,
  isNoteQuiet,
  isOptional,
  isLabelHidden,
  options,
  id,
  ...select
}: FieldTexts & { options: readonly { value: string; label: string }[] } & ComponentProps<"select">) {
  const ownId = useId();
  const fieldId = id ?? ownId;
  const { describedBy } = fieldIds(fieldId, { hint, error, note });
  return (
    <FieldFrame id={fieldId} {...{ label, hint, error, note, isNoteQuiet, isOptional, isLabelHidden }}>
      <div className={`${styles.box} ${styles.plainSelect}`}>
        <select
          id={fieldId}
          className={styles.input}
          aria-describedby={describedBy}
          aria-invalid={error ? true : undefined}
          {...select}
        >
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      </div>
    </FieldFrame>
  );
}
