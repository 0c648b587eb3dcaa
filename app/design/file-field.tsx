import type { ComponentProps } from "react";
import styles from "./field.module.css";
import { FieldFrame, type FieldTexts, fieldIds } from "./field-frame.tsx";

/** A file to choose: the browser's own field, with a button that a thumb can hit. */
export function FileField({
  id,
  label,
  hint,
  error,
  note,
  isOptional,
  ...input
}: FieldTexts & { id: string } & Omit<ComponentProps<"input">, "id" | "type">) {
  const { describedBy } = fieldIds(id, { hint, error, note });
  return (
    <FieldFrame id={id} label={label} hint={hint} error={error} note={note} isOptional={isOptional ?? false}>
      <input
        {...input}
        id={id}
        type="file"
        className={styles.file}
        aria-describedby={describedBy}
        aria-invalid={error ? true : undefined}
      />
    </FieldFrame>
  );
}
