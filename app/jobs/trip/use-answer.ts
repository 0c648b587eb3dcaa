"use client";

import { useEffect, useRef, useState } from "react";
import type { FieldProblem } from "#lib/errors/input-problem.ts";
import type { Answer } from "./answer.ts";
import type { AnswerReply, AnswerRequest } from "./answer-worker.ts";
import type { Draft } from "./draft.ts";

const PAUSE_MS = 150;

export interface LiveAnswer {
  answer: Answer | null;
  /** What keeps the newest state of the form from being answered. */
  problems: readonly FieldProblem[];
}

/** Answers the form while it is filled in. The last answer stays until a newer one comes, so that nothing jumps. */
export function useAnswer(draft: Draft, first: LiveAnswer): LiveAnswer {
  const [live, setLive] = useState(first);
  const worker = useRef<Worker | null>(null);
  const lastId = useRef(0);

  useEffect(() => {
    const started = new Worker(new URL("./answer-worker.ts", import.meta.url), { type: "module" });
    started.addEventListener("message", ({ data }: MessageEvent<AnswerReply>) => {
      if (data.id !== lastId.current) return;
      if (data.answer) setLive({ answer: data.answer, problems: [] });
      else setLive(({ answer }) => ({ answer, problems: data.problems }));
    });
    worker.current = started;
    return () => started.terminate();
  }, []);

  useEffect(() => {
    const timer = setTimeout(() => {
      lastId.current += 1;
      worker.current?.postMessage({ id: lastId.current, draft } satisfies AnswerRequest);
    }, PAUSE_MS);
    return () => clearTimeout(timer);
  }, [draft]);

  return live;
}
