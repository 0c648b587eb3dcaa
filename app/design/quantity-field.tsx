import { type ComponentProps, useId } from "react";
import styles from "./field.module.css";
import { FieldFrame, type FieldTexts, fieldIds } from "./field-frame.tsx";

/**
 * A number with its unit. The label says the unit in words ("Fan flow, in cubic feet per minute"), because screen
 * readers skip the box with the short form. It is a text input with a decimal keyboard on purpose: `type="number"`
 * drops what it cannot read, scrolls values away, and refuses "1,250". Read the text with `readQuantity`.
 */
export function QuantityField({
  label,
  hint,
  error,
  note,
  isNoteQuiet,
  isOptional,
  isLabelHidden,
  unit,
  isLarge = false,
  onSign,
  id,
  ...input
}: FieldTexts & {
  unit: string;
  isLarge?: boolean;
  /** Turns plus into minus and back. The number pad of many phones has no minus. */
  onSign?: (() => void) | undefined;
} & Omit<ComponentProps<"input">, "type" | "inputMode">) {
  const ownId = useId();
  const fieldId = id ?? ownId;
  const { describedBy } = fieldIds(fieldId, { hint, error, note });
  return (
    <FieldFrame id={fieldId} {...{ label, hint, error, note, isNoteQuiet, isOptional, isLabelHidden }}>
      <div
        className={isLarge ? `${styles.box} ${styles.quantity} ${styles.large}` : `${styles.box} ${styles.quantity}`}
      >
        {onSign ? (
          <button type="button" className={styles.sign} onClick={onSign}>
            <span aria-hidden="true">±</span>
            <span className={styles.hidden}>Plus or minus: {label}</span>
          </button>
        ) : null}
        <input
          id={fieldId}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          spellCheck={false}
          className={styles.input}
          aria-describedby={describedBy}
          aria-invalid={error ? true : undefined}
          {...input}
        />
        <span className={styles.unit} aria-hidden="true">
          {unit}
        </span>
      </div>
    </FieldFrame>
  );
}
