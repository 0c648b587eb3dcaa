"use client";

import { Notice, type NoticeKind } from "#app/design/notice.tsx";
import { WithTerms } from "#app/words/with-terms.tsx";
import type { Warning } from "#lib/job/result/evidence-result.ts";
import { useTrip } from "./trip-context.ts";

const KINDS: Readonly<Record<Warning["severity"], NoticeKind>> = { note: "info", doubt: "doubt", problem: "problem" };

/** What the program says back to what was entered under a path. It never blocks the way. */
export function NotesAt({ path }: { path: string }) {
  const { answer } = useTrip();
  const pointer = `#/${path}`;
  const notes = (answer?.notes ?? []).filter((note) => note.path === pointer || note.path.startsWith(`${pointer}/`));
  return notes.map((note) => (
    <Notice key={`${note.code} ${note.path}`} kind={KINDS[note.severity]} title={note.what} isLive>
      <p>
        <WithTerms>{`${note.why} ${note.nextMove}`}</WithTerms>
      </p>
    </Notice>
  ));
}
