"use client";

import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import { Button } from "#app/design/button.tsx";
import { FileField } from "#app/design/file-field.tsx";
import { Notice } from "#app/design/notice.tsx";
import { PlainSelect } from "#app/design/plain-select.tsx";
import styles from "../program.module.css";
import { columnsOfHead, guessColumn } from "./table-head.ts";

const HEAD_BYTES = 65_536;
const MOST_BYTES = 10_000_000;

/** A file with claims; of a table it is first said which column holds what. */
export function ImportForm({ contractors }: { contractors: readonly { value: string; label: string }[] }) {
  const router = useRouter();
  const [file, setFile] = useState<File | null>(null);
  const [columns, setColumns] = useState<readonly string[] | null>(null);
  const [problem, setProblem] = useState("");
  const [isSending, setSending] = useState(false);

  async function choose(chosen: File | undefined) {
    setProblem("");
    setFile(chosen ?? null);
    const isTable = chosen?.name.toLowerCase().endsWith(".csv");
    setColumns(chosen && isTable ? columnsOfHead(await chosen.slice(0, HEAD_BYTES).text()) : null);
  }

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    if (!file) return setProblem("Choose a file with claims.");
    if (file.size > MOST_BYTES)
      return setProblem("This page takes files up to 10 MB. Use the command import-claims for larger ones.");
    const query = new URLSearchParams({ name: file.name });
    for (const [name, value] of new FormData(event.currentTarget))
      if (typeof value === "string" && value !== "") query.set(name, value);
    setSending(true);
    const response = await fetch(`/program/import/receive?${query}`, { method: "POST", body: file }).catch(() => null);
    setSending(false);
    const answer = (await response?.json().catch(() => null)) as {
      batchId?: string;
      claimId?: string;
      detail?: string;
    } | null;
    if (answer?.claimId) router.push(`/program/claims/${answer.claimId}`);
    else if (answer?.batchId) {
      router.push(`/program/import?batch=${answer.batchId}`);
      router.refresh();
    } else setProblem(answer?.detail ?? "The file did not arrive. Try again.");
  }

  const choice = (label: string, name: string, word: string, isNeeded: boolean) => (
    <PlainSelect
      label={label}
      name={name}
      key={`${name} ${file?.name}`}
      defaultValue={guessColumn(columns ?? [], word)}
      options={[
        ...(isNeeded ? [] : [{ value: "", label: "No column" }]),
        ...(columns ?? []).map((column) => ({ value: column, label: column })),
      ]}
    />
  );
  return (
    <form onSubmit={send} noValidate className={`${styles.stack} ${styles.sender}`}>
      {problem ? <Notice kind="problem" title={problem} isLive /> : null}
      <FileField
        id="claims"
        label="File with claims"
        hint="NDJSON: one claim packet a line. CSV: one claim a row, its packet as text in one column. HPXML: one house, with the leakage before the work and after."
        accept=".ndjson,.jsonl,.csv,.xml"
        onChange={(event) => void choose(event.currentTarget.files?.[0])}
      />
      {columns ? (
        <div className={styles.filters}>
          {choice("The packet is in", "claim", "claim", true)}
          {choice("The contractor’s id is in", "contractorColumn", "contractor", false)}
          {choice("The claim’s number is in", "reference", "reference", false)}
        </div>
      ) : null}
      <PlainSelect
        label={
          /\.xml$/i.test(file?.name ?? "")
            ? "Contractor that the house comes from"
            : "Contractor of claims that do not name theirs"
        }
        name="contractor"
        options={[{ value: "", label: "None: each must name it" }, ...contractors]}
      />
      <Button type="submit" disabled={isSending}>
        {isSending ? "Taking in" : "Take the claims in"}
      </Button>
    </form>
  );
}
