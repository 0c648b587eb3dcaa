"use client";

import { useState } from "react";
import { Button } from "#app/design/button.tsx";
import { ChoiceCards } from "#app/design/choice-cards.tsx";
import { EmptyState } from "#app/design/empty-state.tsx";
import { Picture } from "#app/design/picture.tsx";
import { COMPACT_WIDTH } from "#lib/pictures/scene.ts";
import { listAt } from "../draft.ts";
import styles from "../trip.module.css";
import { useTrip } from "../trip-context.ts";
import { LeakCard } from "./leak-card.tsx";
import { leakAt, leakSpots } from "./leak-spots.ts";
import { WalkStatus } from "./walk-status.tsx";

/** The walk along the ducts: where one is, what one sees there, and what is still hidden. */
export function LeaksStep() {
  const { draft, answer, set } = useTrip();
  const [opened, setOpened] = useState<string>();
  const [spotId, setSpotId] = useState<string>();
  const sites = listAt(draft, "sites");
  const spots = leakSpots(draft);
  const spot = spots.find(({ id }) => id === spotId) ?? spots[0];
  const add = () => {
    const leak = leakAt(draft, spot);
    set("sites", [...sites, leak]);
    setOpened(String(leak.id));
  };
  return (
    <>
      {answer ? (
        <div className={styles.walkDrawing}>
          <Picture
            build={({ width }) => (width === COMPACT_WIDTH ? answer.house.compact : answer.house.wide)}
            headingLevel={2}
            isHeadingHidden
            itemHref={(id) => (sites.some((site) => site.id === id) ? `#leak-${id}` : undefined)}
          />
        </div>
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
        <Button isWide onClick={add}>
          Add a leak
        </Button>
      </div>
    </>
  );
}
