"use client";

import { useEffect, useRef, useState } from "react";
import type { FieldProblem } from "#lib/errors/input-problem.ts";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import type { Answer } from "./answer.ts";
import type { AnswerReply, AnswerRequest } from "./answer-worker.ts";
import type { Draft } from "./draft.ts";
import type { LiveReadings } from "./live-readings.ts";
import type { WalkWords } from "./walk-words.ts";

/** Whoever pauses this long wants to see how sure the answer is. */
const PAUSE_MS = 150;

export interface LiveAnswer {
  answer: Answer | null;
  /** What keeps the newest state of the form from being answered. */
  problems: readonly FieldProblem[];
  /** Each test as far as it is typed; nothing before the worker speaks. */
  readings?: LiveReadings | undefined;
  /** Where the leak walk stands; nothing before the worker speaks. */
  walk?: WalkWords | undefined;
}

/** Answers the form while it is filled in. The last answer stays until a newer one comes, so that nothing jumps. */
export function useAnswer(draft: Draft, units: UnitSystem, first: LiveAnswer): LiveAnswer {
  const [live, setLive] = useState(first);
  const worker = useRef<Worker | null>(null);
  const lastId = useRef(0);

  useEffect(() => {
    const started = new Worker(new URL("./answer-worker.ts", import.meta.url), { type: "module" });
    started.addEventListener("message", ({ data }: MessageEvent<AnswerReply>) => {
      if (data.id !== lastId.current) return;
      if ("readings" in data) setLive((before) => ({ ...before, readings: data.readings }));
      else if ("walk" in data) setLive((before) => ({ ...before, walk: data.walk }));
      else if (data.answer) setLive((before) => ({ ...before, answer: data.answer, problems: [] }));
      else setLive((before) => ({ ...before, problems: data.problems }));
    });
    worker.current = started;
    return () => started.terminate();
  }, []);

  useEffect(() => {
    const ask = (isQuick: boolean) => {
      lastId.current += 1;
      worker.current?.postMessage({ id: lastId.current, draft, units, isQuick } satisfies AnswerRequest);
    };
    // What the server worked out for the draft as it came stays until its ranges are here.
    if (lastId.current > 0) ask(true);
    const timer = setTimeout(() => ask(false), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [draft, units]);

  return live;
}
