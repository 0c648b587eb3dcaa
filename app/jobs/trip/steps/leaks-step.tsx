"use client";

import { useEffect, useState } from "react";
import { Button } from "#app/design/button.tsx";
import { ChoiceCards } from "#app/design/choice-cards.tsx";
import { EmptyState } from "#app/design/empty-state.tsx";
import type { DuctSpot } from "#lib/pictures/house/duct-spots.ts";
import { type Draft, listAt } from "../draft.ts";
import styles from "../trip.module.css";
import { useTrip } from "../trip-context.ts";
import { spotWords } from "./duct-spot-words.ts";
import { LeakCard } from "./leak-card.tsx";
import { leakAt, leakAtSpot, leakSpots, placeOfSpot, placeWordsOf } from "./leak-spots.ts";
import { WALK_DRAWING_ID, WalkDrawing } from "./walk-drawing.tsx";
import { WalkStatus } from "./walk-status.tsx";

/** The walk along the ducts: where one is, what one sees there, and what is still hidden. */
export function LeaksStep() {
  const { draft, answer, set } = useTrip();
  const [opened, setOpened] = useState<string>();
  const [spotId, setSpotId] = useState<string>();
  const [drawn, setDrawn] = useState<DuctSpot>();
  const [movingId, setMovingId] = useState<string>();
  const [putId, setPutId] = useState<string>();
  const sites = listAt(draft, "sites");
  const spots = leakSpots(draft);
  const spot = spots.find(({ id }) => id === spotId) ?? spots[0];
  const movingAt = sites.findIndex(({ id }) => id === movingId);

  // A leak put on the drawing is described in its card, which stands further down.
  useEffect(() => {
    if (putId) document.getElementById(`leak-${putId}`)?.querySelector("summary")?.focus();
  }, [putId]);

  const keep = (leak: Draft) => {
    set("sites", [...sites, leak]);
    setOpened(String(leak.id));
  };
  const put = (at: DuctSpot) => {
    if (movingAt >= 0) {
      set(
        "sites",
        sites.map((site, index) => (index === movingAt ? { ...site, ...placeOfSpot(at) } : site)),
      );
      setPutId(movingId);
    } else {
      const leak = leakAtSpot(draft, at);
      keep(leak);
      setPutId(String(leak.id));
    }
    setMovingId(undefined);
    setDrawn(undefined);
  };
  const move = (id: string) => {
    setMovingId(id);
    setDrawn(undefined);
    setPutId(undefined);
    const drawing = document.getElementById(WALK_DRAWING_ID);
    drawing?.scrollIntoView();
    drawing?.focus({ preventScroll: true });
  };
  return (
    <>
      {answer ? (
        <WalkDrawing
          house={answer.house}
          chosen={drawn}
          movingNumber={movingAt < 0 ? undefined : movingAt + 1}
          wordsOf={(at) => spotWords(at, placeWordsOf(draft, at.placeId))}
          hrefOfLeak={(id) => (sites.some((site) => site.id === id) ? `#leak-${id}` : undefined)}
          onChoose={setDrawn}
          onPut={put}
          onLeave={() => setMovingId(undefined)}
        />
      ) : null}
      <WalkStatus />
      {sites.length === 0 ? (
        <EmptyState title="No leak tagged yet">
          Walk from the air handler outward: cabinet, plenums, take-offs, boots, returns. What the test reads and nobody
          has seen stays in the drawing as “not yet found”.
        </EmptyState>
      ) : (
        <ol className={styles.leaks}>
          {sites.map((site, index) => (
            <LeakCard
              key={String(site.id)}
              path={`sites/${index}`}
              site={site}
              number={index + 1}
              isOpen={site.id === opened}
              onMove={answer ? () => move(String(site.id)) : undefined}
              onRemove={() =>
                set(
                  "sites",
                  sites.filter((each) => each !== site),
                )
              }
            />
          ))}
        </ol>
      )}
      <div className={styles.addLeak}>
        {answer ? (
          <p>
            <a href={`#${WALK_DRAWING_ID}`}>Back to the drawing</a> to put the next leak where it is, or say where you
            are:
          </p>
        ) : null}
        {spots.length > 1 ? (
          <ChoiceCards
            label="Where you are on the ducts"
            name="leak-spot"
            isRow
            choices={spots.map(({ id, label }) => ({ value: id, label }))}
            value={spot?.id ?? ""}
            onChange={(event) => setSpotId(event.currentTarget.value)}
          />
        ) : null}
        <Button isWide variant={drawn ? "secondary" : "primary"} onClick={() => keep(leakAt(draft, spot))}>
          Add a leak
        </Button>
      </div>
    </>
  );
}
