import type { ReactNode } from "react";
import { Button, LinkButton } from "./button.tsx";
import { ErrorSummary } from "./error-summary.tsx";
import { Notice } from "./notice.tsx";
import styles from "./save-form.module.css";

/** The frame of a form that is saved as a whole: what is wrong stands on top, saving and leaving stand below. */
export function SaveForm({
  problems,
  refusal,
  isSaving,
  saveLabel,
  leaveTo,
  onSave,
  children,
}: {
  problems: readonly { readonly fieldId: string; readonly text: string }[];
  /** Why nothing was saved though each field is right, such as that somebody else saved meanwhile. */
  refusal: string | undefined;
  isSaving: boolean;
  saveLabel: string;
  /** The page one goes back to without saving. */
  leaveTo: string;
  onSave: () => void;
  children: ReactNode;
}) {
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        onSave();
      }}
    >
      <ErrorSummary errors={problems} />
      {refusal ? (
        <Notice kind="problem" title="This was not saved">
          {refusal}
        </Notice>
      ) : null}
      {children}
      <div className={styles.actions}>
        <Button type="submit" disabled={isSaving}>
          {isSaving ? "Saving" : saveLabel}
        </Button>
        <LinkButton href={leaveTo} variant="quiet">
          Leave it as it was
        </LinkButton>
      </div>
    </form>
  );
}
