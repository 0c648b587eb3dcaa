import type { ReactNode } from "react";
import styles from "./field.module.css";

/** What surrounds any field: its label, why it is asked, what is wrong with it, what it says back. */
export interface FieldTexts {
  label: ReactNode;
  /** One short sentence. */
  hint?: ReactNode;
  /** What to do, in the words of the label. Shown with a sign, never by color alone. */
  error?: ReactNode;
  /** A live word on what was typed: doubtful, surprising, good. */
  note?: ReactNode;
  /** Not read out when it changes: for a note that follows what is typed elsewhere. */
  isNoteQuiet?: boolean;
  isOptional?: boolean;
  /** For fields in a table, whose head says it already; screen readers still hear it. */
  isLabelHidden?: boolean;
}

export interface FieldIds {
  hintId: string | undefined;
  errorId: string | undefined;
  noteId: string | undefined;
  describedBy: string | undefined;
}

export function fieldIds(id: string, { hint, error, note }: Pick<FieldTexts, "hint" | "error" | "note">): FieldIds {
  const hintId = hint ? `${id}-hint` : undefined;
  const errorId = error ? `${id}-error` : undefined;
  const noteId = note ? `${id}-note` : undefined;
  const describedBy = [hintId, errorId, noteId].filter(Boolean).join(" ") || undefined;
  return { hintId, errorId, noteId, describedBy };
}

/** Why a field is asked and what is wrong with it: above its control. */
export function HintAndError({ id, hint, error }: Pick<FieldTexts, "hint" | "error"> & { id: string }) {
  const { hintId, errorId } = fieldIds(id, { hint, error });
  return (
    <>
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
    </>
  );
}

/** What a field says back: below its control. */
export function FieldNote({
  id,
  note,
  isNoteQuiet = false,
}: Pick<FieldTexts, "note" | "isNoteQuiet"> & { id: string }) {
  return note ? (
    <p id={fieldIds(id, { note }).noteId} className={styles.note} aria-live={isNoteQuiet ? undefined : "polite"}>
      {note}
    </p>
  ) : null;
}

export const Optional = ({ isOptional }: Pick<FieldTexts, "isOptional">) =>
  isOptional ? <span className={styles.optional}> (optional)</span> : null;

export function FieldFrame({
  id,
  label,
  hint,
  error,
  note,
  isNoteQuiet = false,
  isOptional,
  isLabelHidden = false,
  children,
}: FieldTexts & { id: string; children: ReactNode }) {
  return (
    <div
      className={[styles.field, error ? styles.wrong : "", isLabelHidden ? styles.inTable : ""]
        .filter(Boolean)
        .join(" ")}
    >
      <label htmlFor={id} className={isLabelHidden ? styles.hidden : styles.label}>
        {label}
        <Optional isOptional={isOptional} />
      </label>
      <HintAndError id={id} hint={hint} error={error} />
      {children}
      <FieldNote id={id} note={note} isNoteQuiet={isNoteQuiet} />
    </div>
  );
}
