"use client";

import { useActionState } from "react";
import { Button } from "#app/design/button.tsx";
import { ErrorSummary } from "#app/design/error-summary.tsx";
import { FileField } from "#app/design/file-field.tsx";
import { type FirmReply, removeLogo, saveLogo } from "./actions.ts";
import styles from "./organization.module.css";
import { shrinkPicture } from "./shrink-picture.ts";

async function sendSmall(before: FirmReply | null, form: FormData): Promise<FirmReply> {
  const file = form.get("logo");
  if (file instanceof File && file.size > 0) form.set("logo", await shrinkPicture(file));
  return await saveLogo(before, form);
}

export function LogoForm({ hasLogo }: { hasLogo: boolean }) {
  const [state, submit, isPending] = useActionState(sendSmall, null);
  const problems = state?.problems ?? [];
  return (
    <form action={submit} noValidate>
      <ErrorSummary errors={problems} />
      <FileField
        id="logo"
        name="logo"
        label={hasLogo ? "Another logo" : "Logo"}
        hint="A PNG or JPEG picture. It is made small enough for papers."
        error={problems[0]?.text}
        accept="image/png,image/jpeg"
      />
      <div className={styles.actions}>
        <Button type="submit" variant="secondary" disabled={isPending}>
          {isPending ? "Saving" : "Use this logo"}
        </Button>
        {hasLogo ? (
          <Button type="submit" variant="quiet" formAction={removeLogo} formNoValidate>
            Remove the logo
          </Button>
        ) : null}
      </div>
    </form>
  );
}
