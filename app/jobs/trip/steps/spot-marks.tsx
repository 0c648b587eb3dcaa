import type { DuctSpot } from "#lib/pictures/house/duct-spots.ts";
import type { HouseScene } from "#lib/pictures/house/house-section.ts";
import styles from "./walk-drawing.module.css";

/**
 * The spots of one drawing as radio buttons upon it: arrow keys and a screen reader choose among them by name, a finger
 * by tapping near one (the drawing takes the tap, so that each is as large as there is room).
 */
export function SpotMarks({
  scene,
  name,
  chosen,
  wordsOf,
  onChoose,
}: {
  scene: HouseScene;
  name: string;
  chosen: DuctSpot | undefined;
  wordsOf: (spot: DuctSpot) => string;
  onChoose: (spot: DuctSpot) => void;
}) {
  const shown = chosen && spotAlike(scene.spots, chosen);
  return (
    <fieldset className={styles.spots}>
      <legend className={styles.hidden}>Where the leak is on the drawing</legend>
      {scene.spots.map((spot) => (
        <input
          key={spot.id}
          type="radio"
          name={name}
          className={spot.isTaken ? `${styles.spot} ${styles.taken}` : styles.spot}
          style={{ left: `${(100 * spot.x) / scene.width}%`, top: `${(100 * spot.y) / scene.height}%` }}
          aria-label={wordsOf(spot)}
          checked={spot === shown}
          onChange={() => onChoose(spot)}
        />
      ))}
    </fieldset>
  );
}

/** The same spot in a drawing of another width, which may show fewer branches: the nearest one of its kind. */
function spotAlike(spots: readonly DuctSpot[], wanted: DuctSpot): DuctSpot | undefined {
  const distance = ({ alongShare }: DuctSpot) => Math.abs(alongShare - wanted.alongShare);
  return spots
    .filter(
      ({ systemId, side, placeId, part }) =>
        systemId === wanted.systemId && side === wanted.side && placeId === wanted.placeId && part === wanted.part,
    )
    .sort((a, b) => distance(a) - distance(b))[0];
}

/** As far from a spot as a tap may be and still mean it, in CSS pixels. */
const FARTHEST_TAP = 44;
/** What lies within half the width of a thumb of a tap may be meant as well. */
const THUMB = 22;
const MOST_NEAR = 4;

/** The spots that a tap on a drawing may mean, nearest first; none where it is far from every duct. */
export function spotsAtTap({
  scene,
  box,
  x,
  y,
}: {
  scene: HouseScene;
  box: Pick<DOMRect, "left" | "top" | "width">;
  x: number;
  y: number;
}): DuctSpot[] {
  const scale = box.width / scene.width;
  const byDistance = scene.spots
    .map((spot) => ({ spot, away: Math.hypot(spot.x * scale + box.left - x, spot.y * scale + box.top - y) }))
    .filter(({ away }) => away <= FARTHEST_TAP)
    .sort((a, b) => a.away - b.away);
  const nearest = byDistance[0]?.away ?? 0;
  return byDistance
    .filter(({ away }, index) => index === 0 || away <= Math.max(THUMB, nearest))
    .slice(0, MOST_NEAR)
    .map(({ spot }) => spot);
}
