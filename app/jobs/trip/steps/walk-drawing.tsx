"use client";

import { type MouseEvent, useState } from "react";
import { Button } from "#app/design/button.tsx";
import { ChoiceCards } from "#app/design/choice-cards.tsx";
import { Picture } from "#app/design/picture.tsx";
import type { DuctSpot } from "#lib/pictures/house/duct-spots.ts";
import type { HouseScene } from "#lib/pictures/house/house-section.ts";
import { COMPACT_WIDTH } from "#lib/pictures/scene.ts";
import type { DrawnScene } from "../answer.ts";
import { SpotMarks, spotsAtTap } from "./spot-marks.tsx";
import styles from "./walk-drawing.module.css";

/** The id of the drawing, for whoever comes back to it from further down. */
export const WALK_DRAWING_ID = "walk-drawing";

/** The house one walks through: tap the duct where the leak is, and put it there. */
export function WalkDrawing({
  house,
  chosen,
  movingNumber,
  wordsOf,
  hrefOfLeak,
  onChoose,
  onPut,
  onLeave,
}: {
  house: DrawnScene<HouseScene>;
  chosen: DuctSpot | undefined;
  /** Of the leak that is to be put elsewhere; absent while a new one is looked for. */
  movingNumber: number | undefined;
  wordsOf: (spot: DuctSpot) => string;
  hrefOfLeak: (id: string) => string | undefined;
  onChoose: (spot: DuctSpot) => void;
  onPut: (spot: DuctSpot) => void;
  onLeave: () => void;
}) {
  const [near, setNear] = useState<readonly DuctSpot[]>([]);
  const sceneOf = (width: number) => (width === COMPACT_WIDTH ? house.compact : house.wide);
  const choose = (event: MouseEvent<HTMLDivElement>) => {
    const svg = event.target instanceof Element ? event.target.closest("svg") : null;
    // A leak is a link to its own card.
    if (!svg || (event.target as Element).closest("a")) return;
    const scene = svg.viewBox.baseVal.width === COMPACT_WIDTH ? house.compact : house.wide;
    const tapped = spotsAtTap({ scene, box: svg.getBoundingClientRect(), x: event.clientX, y: event.clientY });
    setNear(tapped.length > 1 ? tapped : []);
    if (tapped[0]) onChoose(tapped[0]);
  };
  const chooseAlone = (spot: DuctSpot) => {
    setNear([]);
    onChoose(spot);
  };
  const moving = movingNumber === undefined ? "" : `Leak ${movingNumber} goes to: `;
  const asked = movingNumber === undefined ? "" : ` Leak ${movingNumber} goes there.`;
  return (
    <section id={WALK_DRAWING_ID} className={styles.drawing} aria-label="The house and its ducts" tabIndex={-1}>
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: keys choose by the radio buttons upon the drawing */}
      {/* biome-ignore lint/a11y/noStaticElementInteractions: a tap on the drawing chooses the nearest radio button */}
      <div onClick={choose}>
        <Picture
          build={({ width }) => sceneOf(width)}
          headingLevel={2}
          isHeadingHidden
          itemHref={hrefOfLeak}
          overlay={(width) => (
            <SpotMarks
              scene={sceneOf(width)}
              name={`duct-spot-${width}`}
              chosen={chosen}
              wordsOf={wordsOf}
              onChoose={chooseAlone}
            />
          )}
        >
          <div className={styles.bar}>
            <p role="status" className={styles.where}>
              {chosen ? `${moving}${wordsOf(chosen)}` : `Tap the duct where the leak is.${asked}`}
            </p>
            {chosen && near.includes(chosen) ? (
              <ChoiceCards
                label="Near there, which one?"
                name="near-spot"
                choices={near.map((spot) => ({ value: spot.id, label: wordsOf(spot) }))}
                value={chosen.id}
                onChange={(event) => {
                  const spot = near.find(({ id }) => id === event.currentTarget.value);
                  if (spot) onChoose(spot);
                }}
              />
            ) : null}
            {chosen ? (
              <Button isWide onClick={() => onPut(chosen)}>
                {movingNumber === undefined ? "Add a leak here" : `Put leak ${movingNumber} here`}
              </Button>
            ) : null}
            {movingNumber === undefined ? null : (
              <Button variant="quiet" onClick={onLeave}>
                Leave leak {movingNumber} where it is
              </Button>
            )}
          </div>
        </Picture>
      </div>
    </section>
  );
}
