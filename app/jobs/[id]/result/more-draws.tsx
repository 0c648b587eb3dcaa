"use client";

import { useEffect, useRef, useState } from "react";
import { Button } from "#app/design/button.tsx";
import { Notice } from "#app/design/notice.tsx";
import { formatUsd } from "#lib/units/format.ts";
import type { MoreDrawsReply, MoreDrawsRequest } from "./more-draws-worker.ts";
import styles from "./result.module.css";

const DRAWS = 50_000;
const SAID = DRAWS.toLocaleString("en-US");

type Done = Extract<MoreDrawsReply, { kind: "done" }>;
type State = { kind: "idle" | "failed" | "stopped" } | { kind: "working"; done: number } | Done;

const errorWords = (usd: number): string => (usd < 1 ? "less than $1" : formatUsd(usd));

function saidOf({ savedUsdPerYear: { p10, p50, p90 }, convergence, seconds }: Done): string {
  const range = `Of ${SAID} draws eight in ten lie between ${formatUsd(p10!)} and ${formatUsd(p90!)} a year, half of them below ${formatUsd(p50!)}.`;
  const left = convergence
    ? ` Other draws would move the ends by ${errorWords(convergence.p10StandardErrorUsdPerYear)} and ${errorWords(convergence.p90StandardErrorUsdPerYear)}.`
    : "";
  return `${range}${left} They took ${seconds.toFixed(1)} s on this device.`;
}

/** More draws than a page waits for, on the reader's own device, with how far they are and a way to stop them. */
export function MoreDraws({
  jobId,
  measures,
  seed,
}: {
  jobId: string;
  measures: MoreDrawsRequest["measures"];
  seed: number;
}) {
  const [state, setState] = useState<State>({ kind: "idle" });
  const worker = useRef<Worker | null>(null);
  /** Grows with each start and stop, so that what was fetched for a stopped run starts nothing. */
  const run = useRef(0);
  const end = () => {
    run.current += 1;
    worker.current?.terminate();
    worker.current = null;
  };
  useEffect(() => () => worker.current?.terminate(), []);

  async function draw() {
    end();
    const own = run.current;
    setState({ kind: "working", done: 0 });
    const response = await fetch(`/jobs/${jobId}/file`).catch(() => null);
    if (run.current !== own) return;
    if (!response?.ok) return setState({ kind: "failed" });
    const job: unknown = await response.json();
    if (run.current !== own) return;
    const started = new Worker(new URL("./more-draws-worker.ts", import.meta.url), { type: "module" });
    worker.current = started;
    started.onmessage = ({ data }: MessageEvent<MoreDrawsReply>) => {
      if (data.kind === "progress") return setState({ kind: "working", done: data.done });
      setState(data);
      end();
    };
    started.onerror = () => {
      setState({ kind: "failed" });
      end();
    };
    started.postMessage({ job, measures, draws: DRAWS, seed } satisfies MoreDrawsRequest);
  }

  return (
    <div className={styles.moreDraws}>
      {state.kind === "working" ? (
        <>
          <label>
            <span>
              {state.done.toLocaleString("en-US")} of {SAID} draws
            </span>
            <progress max={DRAWS} value={state.done} />
          </label>
          <Button
            variant="secondary"
            onClick={() => {
              end();
              setState({ kind: "stopped" });
            }}
          >
            Stop
          </Button>
        </>
      ) : (
        <Button variant="secondary" onClick={draw}>
          Draw {SAID} times on this device
        </Button>
      )}
      {state.kind === "stopped" ? <p>Stopped. Nothing was changed.</p> : null}
      {state.kind === "failed" ? (
        <Notice kind="problem" title="The draws could not be made. Load the page again, then try once more." isLive />
      ) : null}
      {state.kind === "done" ? (
        <Notice kind="info" title="The range by more draws" isLive>
          {saidOf(state)}
        </Notice>
      ) : null}
    </div>
  );
}
