"use client";

import { useCallback, useEffect, useRef, useState } from "react";
import type { FieldProblem } from "#lib/errors/input-problem.ts";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import type { Answer } from "./answer.ts";
import { askEngine, hearEngine, warmEngine } from "./answer-engine.ts";
import type { Draft } from "./draft.ts";
import type { LiveReadings } from "./live-readings.ts";
import type { WalkWords } from "./walk-words.ts";
import { WARMING_ID } from "./warming.ts";

/** Whoever pauses this long wants to see how sure the answer is. */
const PAUSE_MS = 150;

export interface LiveAnswer {
  answer: Answer | null;
  /** What keeps the newest state of the form from being answered. */
  problems: readonly FieldProblem[];
  /** Each test as far as it is typed. */
  readings?: LiveReadings | undefined;
  /** Where the leak walk stands, once that is worked out. */
  walk?: WalkWords | undefined;
}

/** What the server works out while the page is on its way: ranges, and what each assumption does to them. */
export type CloserLook = Partial<LiveAnswer>;

export interface AskedForm {
  jobId: string;
  draft: Draft;
  units: UnitSystem;
  first: LiveAnswer;
  later?: Promise<CloserLook>;
}

/** What shows that somebody is about to type. */
const SIGNS_OF_LIFE = ["focusin", "pointerdown", "keydown"] as const;

/**
 * Answers the form while it is filled in. What the server worked out stands until something is changed; the engine
 * comes with the first sign of somebody at the form. The last answer stays until a newer one comes, so that nothing jumps.
 * `ask` sends a state of the form ahead of its rendering: the engine works while the browser draws what was typed.
 */
export function useAnswer({ jobId, draft, units, first, later }: AskedForm): LiveAnswer & {
  ask: (draft: Draft) => void;
} {
  const [live, setLive] = useState(first);
  const awaitedId = useRef(WARMING_ID);
  const untouched = useRef({ draft, units });
  const asked = useRef({ draft, units });
  const ask = useCallback(
    (next: Draft) => {
      asked.current = { draft: next, units };
      awaitedId.current = askEngine({ jobId, draft: next, units, isQuick: true });
    },
    [jobId, units],
  );

  useEffect(
    () =>
      hearEngine(({ id, ...news }) => {
        if (id !== WARMING_ID && id === awaitedId.current) setLive((before) => ({ ...before, ...news }));
      }),
    [],
  );

  useEffect(() => {
    let isGone = false;
    later?.then((closer) => {
      if (!isGone && awaitedId.current === WARMING_ID) setLive((before) => ({ ...before, ...closer }));
    });
    return () => {
      isGone = true;
    };
  }, [later]);

  useEffect(() => {
    const warm = () => warmEngine(jobId, untouched.current.draft, units);
    for (const sign of SIGNS_OF_LIFE) addEventListener(sign, warm, { once: true });
    return () => {
      for (const sign of SIGNS_OF_LIFE) removeEventListener(sign, warm);
    };
  }, [jobId, units]);

  useEffect(() => {
    const isUntouched = draft === untouched.current.draft && units === untouched.current.units;
    if (awaitedId.current === WARMING_ID && isUntouched) return;
    if (draft !== asked.current.draft || units !== asked.current.units) ask(draft);
    const timer = setTimeout(() => {
      awaitedId.current = askEngine({ jobId, draft, units, isQuick: false });
    }, PAUSE_MS);
    return () => clearTimeout(timer);
  }, [jobId, draft, units, ask]);

  return { ...live, ask };
}
