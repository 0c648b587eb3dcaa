import type { StationCandidate } from "#lib/estimate/reference-data.ts";
import type { Feet } from "#lib/units/quantity.ts";
import { greatCircleMiles, type Point } from "./great-circle-miles.ts";

/**
 * What a difference in height counts for, in miles per foot. Each of 925 stations was predicted from another one: rms
 * of the monthly means fell from 4.40 °F by distance alone to 4.05 °F with 100 miles per 1,000 ft, and in the mountains,
 * where the nearest lies over 1,000 ft higher or lower, from 7.7 to 4.2 °F; anything from 75 to 200 does about as well.
 * Source: derived (nrel-tmy3).
 */
const MILES_PER_FT = 0.1;
/**
 * What it counts for that a station has no normals of 1991-2020. Unshifted years miss normals 2 to 20 miles away by
 * 3.2 °F rms of the months, and normals of two stations 45 to 60 miles apart differ by 1.5 °F; half of what these figures
 * allow, and less, since coasts change faster. Source: derived (nrel-tmy3, noaa-normals-1991-2020).
 */
const MILES_WITHOUT_NORMALS = 15;
const CANDIDATES_COUNT = 8;

/** What choosing needs to know of a station. */
export interface StationSite extends Point {
  id: string;
  title: string;
  elevationFt: Feet;
  hasNormals: boolean;
  /** Why it is never chosen by rule; null when nothing speaks against it. */
  doubt: string | null;
}

/**
 * Ranks the weather stations that could stand for a place, best first, each with its reason.
 * Effective miles = great-circle miles + 0.1 mile a foot of height difference + 15 where no normals stand beside the
 * station; stations with faulty hours follow last. Without an elevation of the place, height does not count.
 * Valid anywhere that stations are given. Source: own-method. Left out: coasts, valleys and cities; the choice is shown
 * and can be changed.
 */
export function chooseStation({
  place,
  elevationFt,
  stations,
}: {
  place: Point;
  elevationFt?: Feet | undefined;
  stations: readonly StationSite[];
}): StationCandidate[] {
  return stations
    .map((station) => {
      const distanceMiles = greatCircleMiles(place, station);
      const heightFt = elevationFt === undefined ? 0 : Math.abs(station.elevationFt - elevationFt);
      const effectiveMiles = distanceMiles + MILES_PER_FT * heightFt + (station.hasNormals ? 0 : MILES_WITHOUT_NORMALS);
      return { station, distanceMiles, effectiveMiles };
    })
    .sort(
      (a, b) =>
        Number(a.station.doubt !== null) - Number(b.station.doubt !== null) ||
        a.effectiveMiles - b.effectiveMiles ||
        (a.station.id < b.station.id ? -1 : 1),
    )
    .slice(0, CANDIDATES_COUNT)
    .map(({ station, distanceMiles }) => ({
      id: station.id,
      title: station.title,
      distanceMiles,
      elevationFt: station.elevationFt,
      reason: reasonOf({ station, distanceMiles, elevationFt }),
    }));
}

/** Why a station ranks where it does, in words. */
export function reasonOf({
  station,
  distanceMiles,
  elevationFt,
}: {
  station: StationSite;
  distanceMiles: number;
  elevationFt?: Feet | undefined;
}): string {
  const differenceFt = elevationFt === undefined ? null : Math.round(station.elevationFt - elevationFt);
  const height =
    differenceFt === null
      ? "height not compared, since that of the place is not known"
      : Math.abs(differenceFt) < 50
        ? "at the same height"
        : `${Math.abs(differenceFt).toLocaleString("en-US")} ft ${differenceFt > 0 ? "higher" : "lower"}`;
  const level = station.hasNormals ? "with normals of 1991-2020" : "without normals of 1991-2020";
  const doubt = station.doubt === null ? "" : `; not chosen by itself: ${station.doubt}`;
  const away = distanceMiles < 1.5 ? "about a mile" : `${Math.round(distanceMiles)} miles`;
  return `${away} away, ${height}, ${level}${doubt}`;
}
