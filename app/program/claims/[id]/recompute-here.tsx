"use client";

import { useRef, useState } from "react";
import { Button } from "#app/design/button.tsx";
import { Notice } from "#app/design/notice.tsx";
import type { RecomputeOutcome } from "#lib/claims/recompute-claim.ts";
import styles from "../../program.module.css";
import type { RecomputeReply } from "./recompute-worker.ts";

type State = "idle" | "working" | "failed" | RecomputeReply;

const TITLES: Readonly<Record<RecomputeOutcome["outcome"], string>> = {
  same: "This browser gets every number the same, ranges too.",
  differs: "This browser gets other numbers.",
  invalid: "The packet cannot be recomputed in this browser either.",
};

const apartWords = (ratio: number): string =>
  ratio === 0
    ? "Every number is the same to the last bit."
    : `No number is more than ${ratio.toExponential(0)} of itself from what is claimed; a browser may round the last bit its own way.`;

function saidOf({ outcome, seconds }: RecomputeReply, draws: number): string {
  if (outcome.outcome === "invalid")
    return outcome.errors.map(({ pointer, detail }) => `${pointer}: ${detail}.`).join(" ");
  const done = `${draws.toLocaleString("en-US")} draws in ${seconds.toFixed(1)} s on this device.`;
  if (outcome.outcome === "same") return `${done} ${apartWords(outcome.largestRelativeDifference)}`;
  return `${done} ${outcome.differences.map(({ path }) => path).join(", ")}. ${outcome.notes.map((note) => `${note}.`).join(" ")}`;
}

/** The reader need not trust the server: the packet is recomputed on the reader's own device. */
export function RecomputeHere({ claimId, draws }: { claimId: string; draws: number }) {
  const [state, setState] = useState<State>("idle");
  const worker = useRef<Worker | null>(null);

  async function recompute() {
    setState("working");
    const response = await fetch(`/program/claims/${claimId}/packet`).catch(() => null);
    if (!response?.ok) return setState("failed");
    const packet = await response.text();
    worker.current ??= new Worker(new URL("./recompute-worker.ts", import.meta.url), { type: "module" });
    worker.current.onmessage = ({ data }: MessageEvent<RecomputeReply>) => setState(data);
    worker.current.onerror = () => setState("failed");
    worker.current.postMessage(packet);
  }

  return (
    <div className={styles.here}>
      <Button variant="secondary" onClick={recompute} disabled={state === "working"}>
        {state === "working" ? "Recomputing…" : "Recompute in this browser"}
      </Button>
      {state === "failed" ? (
        <Notice
          kind="problem"
          title="The packet could not be fetched. Load the page again, then try once more."
          isLive
        />
      ) : null}
      {typeof state === "object" ? (
        <Notice kind={state.outcome.outcome === "same" ? "good" : "doubt"} title={TITLES[state.outcome.outcome]} isLive>
          {saidOf(state, draws)}
        </Notice>
      ) : null}
    </div>
  );
}
