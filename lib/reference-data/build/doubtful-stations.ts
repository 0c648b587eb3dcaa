import { greatCircleMiles } from "../great-circle-miles.ts";
import { groupBy, numberIn, type Row, textIn } from "./source-rows.ts";
import type { StationSite } from "./station-sites.ts";

/** The free air cools by about this much a 1,000 ft. Source: practice (standard lapse rate 3.57 °F). */
const LAPSE_F_PER_1000_FT = 3.5;
const NEIGHBORS_COUNT = 8;
/** Faults come in groups (one month of one state), so the hottest few neighbors are not asked. */
const FAULTY_NEIGHBORS_COUNT = 2;
/** Bins this far above what the other neighbors saw in the same month hold hours that cannot be true. Source: own-method. */
const FAR_ABOVE_F = 25;
/** A few stray hours in 8,760 do not move a season; this many do move design temperatures and months. */
const FEWEST_HOURS = 6;
/** Above every temperature ever accepted in the United States outside Death Valley. From memory. */
const RECORD_F = 130;

/** Headers that put a station elsewhere than its name says; found by hand. */
const WRONG_POSITIONS: Readonly<Record<string, string>> = {
  "726626":
    "The header's longitude of 87.15° W lies in Lake Michigan; the town of that name and elevation is near 89.15° W.",
};

/**
 * Stations that should not be chosen by rule, with the reason: typical years with runs of hours far hotter than
 * the third hottest of the eight nearest stations had in that month, after the lapse rate, or hotter than any record.
 * Source: own-method. Left out: runs of impossible cold, which valleys and coasts do have; errors below the limits.
 */
export function findDoubtfulStations(sites: readonly StationSite[], bins: readonly Row[]): Map<string, string> {
  const hottest = new Map<string, number>();
  for (const bin of bins) {
    const key = `${textIn(bin, "tmy3_id")} ${textIn(bin, "month")}`;
    hottest.set(key, Math.max(hottest.get(key) ?? -999, numberIn(bin, "bin_low_F")));
  }
  const binsOf = groupBy(bins, (bin) => textIn(bin, "tmy3_id"));
  const doubts = new Map<string, string>(Object.entries(WRONG_POSITIONS));
  for (const site of sites) {
    const neighbors = sites
      .filter((other) => other.id !== site.id)
      .map((other) => ({ other, miles: greatCircleMiles(site, other) }))
      .sort((a, b) => a.miles - b.miles)
      .slice(0, NEIGHBORS_COUNT);
    const limitIn = (month: string) => {
      const hottestAround = neighbors
        .map(
          ({ other }) =>
            hottest.get(`${other.id} ${month}`)! +
            (LAPSE_F_PER_1000_FT * (other.elevationFt - site.elevationFt)) / 1000,
        )
        .sort((a, b) => b - a);
      return FAR_ABOVE_F + hottestAround[FAULTY_NEIGHBORS_COUNT]!;
    };
    const strayHours = binsOf
      .get(site.id)!
      .filter((bin) => {
        const lowF = numberIn(bin, "bin_low_F");
        return lowF >= RECORD_F || lowF > limitIn(textIn(bin, "month"));
      })
      .reduce((sum, bin) => sum + numberIn(bin, "hours"), 0);
    if (strayHours >= FEWEST_HOURS)
      doubts.set(
        site.id,
        `${strayHours} hours of its typical year are hotter than can be, going by the stations around it.`,
      );
  }
  return doubts;
}
