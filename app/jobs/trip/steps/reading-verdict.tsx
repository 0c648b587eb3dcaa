"use client";

import { Button } from "#app/design/button.tsx";
import { Notice, type NoticeKind } from "#app/design/notice.tsx";
import { Picture } from "#app/design/picture.tsx";
import { COMPACT_WIDTH } from "#lib/pictures/scene.ts";
import { sentenceInSystem } from "#lib/units/sentence-in-system.ts";
import { unitText } from "#lib/units/unit-text.ts";
import { type Draft, listAt, readAt } from "../draft.ts";
import type { LiveNote, LiveReading } from "../live-readings.ts";
import styles from "../trip.module.css";
import { useTrip } from "../trip-context.ts";

const KINDS: Readonly<Record<LiveNote["severity"], NoticeKind>> = { note: "info", doubt: "doubt", problem: "problem" };

/** What the program says to a test while it is typed: its number with its doubt, or what is wrong and the next move. */
export function ReadingVerdict({ path, test, reading }: { path: string; test: Draft; reading: LiveReading }) {
  const { answer, units } = useTrip();
  const { result, notes, picture } = reading;
  const say = unitText(units);
  const here = new Set(notes.map(({ code }) => code));
  // What other tests make doubtful of this one is known only once the whole job can be answered.
  const pointer = `#/${path}`;
  const others = (answer?.notes ?? [])
    .filter((note) => (note.path === pointer || note.path.startsWith(`${pointer}/`)) && !here.has(note.code))
    .map((note): LiveNote => ({ ...note, steps: [] }));
  const all = [...notes, ...others];
  const isSound = !all.some(({ severity }) => severity !== "note");
  return (
    <>
      {result ? (
        <Notice kind={isSound ? "good" : "doubt"} title={`${say.quantity(result.cfm25, "cfm")} at 25 Pa`} isLive>
          <p className={styles.verdict}>
            Could be {say.number(result.lowCfm25, "cfm")} to {say.quantity(result.highCfm25, "cfm")}.
            {isSound ? " Nothing about these readings looks wrong." : " See what is said below."}
          </p>
        </Notice>
      ) : (
        <VerdictToCome />
      )}
      {all.map((note) => (
        <Notice
          key={`${note.code} ${note.steps.join()}`}
          kind={KINDS[note.severity]}
          title={sentenceInSystem(note.what, units)}
          isLive
          actions={note.severity === "note" ? undefined : <KeepAnyway path={path} test={test} note={note} />}
        >
          <p>
            {note.steps.length > 0 && listAt(test, "points").length > 1
              ? `Step ${note.steps.map((step) => step + 1).join(", ")}. `
              : ""}
            {sentenceInSystem(`${note.why} ${note.nextMove}`, units)}
          </p>
        </Notice>
      ))}
      {picture ? (
        <Picture headingLevel={3} build={({ width }) => (width === COMPACT_WIDTH ? picture.compact : picture.wide)} />
      ) : null}
    </>
  );
}

/** Keeps the room of the first number, so that it pushes nothing down. */
export const VerdictToCome = () => (
  <Notice kind="info" title="Leakage at 25 Pa" isLive>
    <p className={styles.verdict}>Needs a pressure and a flow.</p>
  </Notice>
);

/** The way out is never blocked: the reading stays as it was taken, and the mark goes with it. */
function KeepAnyway({ path, test, note }: { path: string; test: Draft; note: LiveNote }) {
  const { set } = useTrip();
  if (note.code === "marked-doubtful") return null;
  const points = listAt(test, "points");
  const meant = note.steps.length > 0 ? note.steps : points.map((_, i) => i);
  const isMarked = meant.every((i) => readAt(points[i] ?? {}, "isDoubtful") === true);
  if (isMarked || points.length === 0) return null;
  return (
    <Button
      variant="quiet"
      onClick={() =>
        set(
          `${path}/points`,
          points.map((point, i) => (meant.includes(i) ? { ...point, isDoubtful: true } : point)),
        )
      }
    >
      Keep it and mark it doubtful
    </Button>
  );
}
