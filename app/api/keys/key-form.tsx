"use client";

import { useActionState } from "react";
import { Button } from "#app/design/button.tsx";
import { Checkbox } from "#app/design/checkbox.tsx";
import { ErrorSummary } from "#app/design/error-summary.tsx";
import { Notice } from "#app/design/notice.tsx";
import { TextField } from "#app/design/text-field.tsx";
import styles from "../api.module.css";
import { makeKey } from "./actions.ts";

export function KeyForm({ scopes }: { scopes: Readonly<Record<string, string>> }) {
  const [reply, submit, isPending] = useActionState(makeKey, null);
  const problems = reply?.problems ?? [];
  return (
    <form action={submit} noValidate className={styles.form}>
      <ErrorSummary errors={problems} />
      {reply?.key ? (
        <Notice kind="good" title="Copy the key now. It is shown this once." isLive>
          <code className={styles.key}>{reply.key}</code>
        </Notice>
      ) : null}
      <TextField
        id="name"
        name="name"
        label="What it is for"
        defaultValue={reply?.name}
        error={problems.find(({ fieldId }) => fieldId === "name")?.text}
        autoComplete="off"
      />
      <fieldset className={styles.scopes}>
        <legend>What it may do</legend>
        {Object.entries(scopes).map(([scope, words]) => (
          <Checkbox key={scope} id={`scope-${scope}`} name="scope" value={scope} label={words} hint={scope} />
        ))}
      </fieldset>
      <Button type="submit" disabled={isPending}>
        {isPending ? "Making" : "Make the key"}
      </Button>
    </form>
  );
}
