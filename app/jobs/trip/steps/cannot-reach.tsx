"use client";

import Link from "next/link";
import { useState } from "react";
import { Button } from "#app/design/button.tsx";
import { Notice } from "#app/design/notice.tsx";
import { Disclosure } from "#app/design/worked-out.tsx";
import { FIRST_REACH_QUESTION, REACH_TREE, type ReachNodeId } from "#lib/setup/cannot-reach.ts";
import { type Draft, listAt, textAt } from "../draft.ts";
import { useTrip } from "../trip-context.ts";

/** "Cannot reach 25 Pa": one question after the other, to a found fault or to a value that is kept and marked. */
export function CannotReach({ path, test, isOpen }: { path: string; test: Draft; isOpen: boolean }) {
  const { jobId, set } = useTrip();
  const [way, setWay] = useState<readonly ReachNodeId[]>([FIRST_REACH_QUESTION]);
  const id = way.at(-1) ?? FIRST_REACH_QUESTION;
  const node = REACH_TREE[id];
  const goTo = (next: ReachNodeId) => setWay([...way, next]);
  const back =
    way.length > 1 ? (
      <Button variant="quiet" onClick={() => setWay(way.slice(0, -1))}>
        Back
      </Button>
    ) : null;
  /** The steps stay as they were read; what marks them is that 25 Pa was out of reach. */
  const keep = () => {
    const points = listAt(test, "points").map((point) => ({ ...point, isDoubtful: true }));
    const said = [textAt(test, "note"), "25 Pa was out of reach; the highest steady pressure was read."];
    set(path, { ...test, points, note: said.filter(Boolean).join(" ").slice(0, 4000) });
  };
  return (
    <Disclosure title="Cannot reach 25 Pa" isOpen={isOpen}>
      {node.kind === "question" ? (
        <Notice
          kind="info"
          word={`${way.length} of 5`}
          title={node.question}
          isLive
          actions={
            <>
              <Button variant="secondary" onClick={() => goTo(node.yes)}>
                Yes
              </Button>
              <Button variant="secondary" onClick={() => goTo(node.no)}>
                No
              </Button>
              {back}
            </>
          }
        >
          <p>{node.how}</p>
        </Notice>
      ) : (
        <Notice
          kind={node.kind === "extrapolate" ? "doubt" : "good"}
          word={node.kind === "extrapolate" ? "Doubtful" : "Found"}
          title={node.title}
          isLive
          actions={
            <>
              {node.kind === "extrapolate" ? (
                <Button variant="secondary" onClick={keep}>
                  Keep it and mark it doubtful
                </Button>
              ) : null}
              {id === "found-fault" ? <Link href={`/jobs/${jobId}/leaks`}>Go to the leaks</Link> : null}
              <Button variant="quiet" onClick={() => setWay([FIRST_REACH_QUESTION])}>
                Start over
              </Button>
              {back}
            </>
          }
        >
          <p>{node.nextMove}</p>
        </Notice>
      )}
    </Disclosure>
  );
}
