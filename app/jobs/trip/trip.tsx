"use client";

import Link from "next/link";
import { useRouter } from "next/navigation";
import { type ReactNode, useCallback, useEffect, useMemo, useState, useTransition } from "react";
import { AnswerBar } from "#app/design/answer-bar.tsx";
import { Button } from "#app/design/button.tsx";
import { ErrorSummary } from "#app/design/error-summary.tsx";
import { Notice } from "#app/design/notice.tsx";
import { TripLayout } from "#app/design/trip-layout.tsx";
import { TripRail } from "#app/design/trip-rail.tsx";
import type { FieldProblem } from "#lib/errors/input-problem.ts";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import { AnswerPanel } from "./answer-panel.tsx";
import { type Draft, type Json, writeAt } from "./draft.ts";
import type { FieldSpecs } from "./field-spec.ts";
import { type MissingField, missingFields } from "./missing.ts";
import { NeededForResult } from "./needed-for-result.tsx";
import { railSteps } from "./rail-steps.ts";
import { saveJob } from "./save-job.ts";
import styles from "./trip.module.css";
import { starPathOf, TripContext } from "./trip-context.ts";
import { STEP_WORDS, TRIP_STEPS, type TripStepId } from "./trip-steps.ts";
import { type CloserLook, type LiveAnswer, useAnswer } from "./use-answer.ts";
import { useFieldOfAddress } from "./use-field-of-address.ts";

const MOST_UNDO = 100;
const NO_READINGS = {};
const NO_NUMBERS_YET = [{ id: "none", label: "Answer", value: "grows here" }];

export interface TripProps {
  jobId: string;
  revision: number;
  step: TripStepId;
  units: UnitSystem;
  firstDraft: Draft;
  specs: FieldSpecs;
  first: LiveAnswer;
  later: Promise<CloserLook>;
  /** Sent here on the way to the result, because something is still needed for it. */
  wantsResult: boolean;
  children: ReactNode;
}

/** The trip through the house: the draft lives here while one step of it is on the screen. */
export function Trip({
  jobId,
  revision,
  step,
  units,
  firstDraft,
  specs,
  first,
  later,
  wantsResult,
  children,
}: TripProps) {
  const router = useRouter();
  const [draft, setDraft] = useState(firstDraft);
  const [past, setPast] = useState<readonly Draft[]>([]);
  const [undoCount, setUndoCount] = useState(0);
  const [unreadable, setUnreadableTexts] = useState<Readonly<Record<string, string>>>({});
  const [savedRevision, setSavedRevision] = useState(revision);
  const [savedDraft, setSavedDraft] = useState(firstDraft);
  const [shown, setShown] = useState<readonly MissingField[]>([]);
  const [conflict, setConflict] = useState<string>();
  const [isSaving, startSaving] = useTransition();
  const { answer, problems, readings = NO_READINGS, walk, ask } = useAnswer({ jobId, draft, units, first, later });
  const isDirty = draft !== savedDraft;
  useFieldOfAddress();

  useEffect(() => {
    if (!isDirty) return;
    const warn = (event: BeforeUnloadEvent) => event.preventDefault();
    addEventListener("beforeunload", warn);
    return () => removeEventListener("beforeunload", warn);
  }, [isDirty]);

  const set = useCallback(
    (path: string, value: Json | undefined) => {
      const next = writeAt(draft, path, value);
      ask(next);
      setPast((states) => [...states.slice(1 - MOST_UNDO), draft]);
      setDraft(next);
    },
    [draft, ask],
  );

  const setUnreadable = useCallback((path: string, text: string | undefined) => {
    setUnreadableTexts(({ [path]: _, ...others }) => (text === undefined ? others : { ...others, [path]: text }));
  }, []);

  const undo = () => {
    const before = past.at(-1);
    if (!before) return;
    setDraft(before);
    setPast(past.slice(0, -1));
    setUnreadableTexts({});
    setUndoCount(undoCount + 1);
  };

  const context = useMemo(
    () => ({
      jobId,
      draft,
      units,
      answer,
      readings,
      walk,
      set,
      setUnreadable,
      unreadable,
      specOf: (path: string) => specs[starPathOf(path)] ?? { title: path, isRequired: false },
      errorAt: (path: string) => shown.find((each) => each.path === path)?.text,
    }),
    [jobId, draft, units, answer, readings, walk, set, setUnreadable, unreadable, specs, shown],
  );

  /** Saves, then goes on; stays where something on this page cannot be used, once. */
  const saveAndGo = (href: string, { mayStay }: { mayStay: boolean }) => {
    const unread = Object.keys(unreadable).map((path) => unreadField(path, step));
    startSaving(async () => {
      const reply = await saveJob({ jobId, onRevision: savedRevision, draft });
      setConflict(reply.conflict);
      if (reply.conflict) return;
      setSavedRevision(reply.revision);
      setSavedDraft(draft);
      const wrong = [...unread, ...wrongHere({ problems: reply.problems, units, step })];
      const isNew = wrong.some((each) => !shown.some((known) => known.path === each.path && known.text === each.text));
      setShown(wrong);
      if (mayStay && isNew) return;
      router.push(href);
      // Whoever comes back to this step finds it as it was saved, not as it was when it was first opened.
      router.refresh();
    });
  };

  const hrefOf = useCallback((id: string) => `/jobs/${jobId}/${id}`, [jobId]);
  const at = TRIP_STEPS.indexOf(step);
  const nextHref = hrefOf(TRIP_STEPS[at + 1] ?? "result");
  const words = STEP_WORDS[step];
  const missing = useMemo(() => missingFields(problems, units), [problems, units]);
  const rail = (
    <TripRail
      steps={railSteps({ draft, units, step, problems: missing, openUsdPerYear: answer?.openUsdPerYear, hrefOf })}
    />
  );
  const fieldHref = useCallback(
    (each: MissingField) => (each.step === step ? `#${each.path}` : `${hrefOf(each.step)}#${each.path}`),
    [step, hrefOf],
  );
  // The pictures are drawn again with a new answer, not with each key before it.
  const panel = useMemo(
    () => (
      <AnswerPanel
        answer={answer}
        hasHouse={step !== "leaks"}
        missing={missing}
        hrefOfStep={hrefOf}
        hrefOf={fieldHref}
      />
    ),
    [answer, step, missing, hrefOf, fieldHref],
  );

  return (
    <TripContext value={context}>
      <div
        onClickCapture={(event) =>
          keepBeforeLeaving({ event, isDirty, go: (href) => saveAndGo(href, { mayStay: false }) })
        }
      >
        <TripLayout
          rail={rail}
          railTitle={`${words.label}, step ${at + 1} of ${TRIP_STEPS.length}`}
          answer={panel}
          answerBar={
            <AnswerBar stats={answer && answer.bar.length > 0 ? answer.bar : NO_NUMBERS_YET}>{panel}</AnswerBar>
          }
        >
          <form
            noValidate
            onSubmit={(event) => {
              event.preventDefault();
              saveAndGo(nextHref, { mayStay: true });
            }}
          >
            <ErrorSummary errors={shown.map(({ path, text }) => ({ fieldId: path, text }))} />
            {conflict ? (
              <Notice
                kind="problem"
                title="Somebody else saved this job meanwhile"
                actions={<Button onClick={() => location.reload()}>Load the newest one</Button>}
              >
                <p>{conflict}</p>
              </Notice>
            ) : null}
            {wantsResult ? (
              <NeededForResult missing={missing} hrefOf={fieldHref} resultHref={hrefOf("result")} />
            ) : null}
            <h1>{words.question}</h1>
            <p>{words.reason}</p>
            <div key={`${undoCount} ${units}`}>{children}</div>
            <div className={styles.foot}>
              <Button type="submit" disabled={isSaving}>
                {words.next}
              </Button>
              <Button variant="quiet" onClick={undo} disabled={past.length === 0}>
                Undo
              </Button>
              <Link href={hrefOf("history")} className={styles.footLink}>
                History and job file
              </Link>
              <p className={`${styles.small} ${styles.saved}`} role="status">
                {isSaving ? "Saving" : isDirty ? "Not saved yet" : `Saved, revision ${savedRevision}`}
              </p>
            </div>
          </form>
        </TripLayout>
      </div>
    </TripContext>
  );
}

const unreadField = (path: string, step: TripStepId): MissingField => ({
  pointer: `#/${path}`,
  path,
  step,
  isMissing: false,
  text: "Enter a number, such as 1,250 or 24.8",
});

/** What cannot be used on this page. What is only missing never holds anyone up. */
const wrongHere = ({
  problems,
  units,
  step,
}: {
  problems: readonly FieldProblem[];
  units: UnitSystem;
  step: TripStepId;
}): MissingField[] => missingFields(problems, units).filter((each) => each.step === step && !each.isMissing);

/** A link to another step saves first; one that opens elsewhere, or stays on the page, is left alone. */
function keepBeforeLeaving({
  event,
  isDirty,
  go,
}: {
  event: React.MouseEvent;
  isDirty: boolean;
  go: (href: string) => void;
}): void {
  const link = event.target instanceof Element ? event.target.closest("a") : null;
  const href = link?.getAttribute("href");
  if (
    !isDirty ||
    !(href?.startsWith("/jobs/") || href?.startsWith("/setup?")) ||
    event.metaKey ||
    event.ctrlKey ||
    event.shiftKey
  )
    return;
  event.preventDefault();
  event.stopPropagation();
  go(href);
}
