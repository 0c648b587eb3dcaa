import { type ComponentProps, useId } from "react";
import styles from "./field.module.css";
import { FieldFrame, type FieldTexts, fieldIds } from "./field-frame.tsx";

/** One line of words. */
export function TextField({
  label,
  hint,
  error,
  note,
  isNoteQuiet,
  isOptional,
  isLabelHidden,
  id,
  ...input
}: FieldTexts & Omit<ComponentProps<"input">, "type">) {
  const ownId = useId();
  const fieldId = id ?? ownId;
  const { describedBy } = fieldIds(fieldId, { hint, error, note });
  return (
    <FieldFrame id={fieldId} {...{ label, hint, error, note, isNoteQuiet, isOptional, isLabelHidden }}>
      <div className={styles.box}>
        <input
          id={fieldId}
          type="text"
          className={styles.input}
          aria-describedby={describedBy}
          aria-invalid={error ? true : undefined}
          {...input}
        />
      </div>
    </FieldFrame>
  );
}

/** Words that may run over several lines. */
export function TextArea({
  label,
  hint,
  error,
  note,
  isNoteQuiet,
  isOptional,
  isLabelHidden,
  id,
  ...input
}: FieldTexts & ComponentProps<"textarea">) {
  const ownId = useId();
  const fieldId = id ?? ownId;
  const { describedBy } = fieldIds(fieldId, { hint, error, note });
  return (
    <FieldFrame id={fieldId} {...{ label, hint, error, note, isNoteQuiet, isOptional, isLabelHidden }}>
      <div className={styles.box}>
        <textarea
          id={fieldId}
          rows={4}
          className={styles.area}
          aria-describedby={describedBy}
          aria-invalid={error ? true : undefined}
          {...input}
        />
      </div>
    </FieldFrame>
  );
}
