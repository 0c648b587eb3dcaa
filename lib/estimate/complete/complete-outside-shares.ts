import type { Job } from "#lib/job/job-schema.ts";
import type { Measurement } from "#lib/measure/measurement.ts";
import type { Ledger } from "../ledger.ts";
import type { ParameterSpace } from "../parameter-space.ts";
import type { PlaceBefore, PlaceModel } from "./complete-places.ts";
import type { SiteModel } from "./complete-sites.ts";
import { PLACE_DEFAULTS } from "./place-defaults.ts";

interface Input {
  job: Job;
  places: readonly PlaceBefore[];
  sites: readonly SiteModel[];
  measurements: readonly Measurement[];
  ledger: Ledger;
  space: ParameterSpace;
}

interface Share {
  value: number;
  doubt: number;
}

const practice = { sourceId: "practice" } as const;
/** Exponent of leaks between house, zone and outside. Source: practice (duct-sized leaks in series with a zone's). */
const SERIES_EXPONENT = 0.6;
const TEST_PRESSURE_PA = 50;
const MEASURED_SHARE_DOUBT = 0.05;
/** How far the sizes of leaks, as judged by eye, mislead about where the leakage lies. Source: practice. */
const DOUBT_OF_SIZES_RATIO = 0.35;

/** Leakage to outside over all leakage, of the systems before the work where both were measured; else null. */
function measuredRatio(measurements: readonly Measurement[]): number | null {
  const early = measurements.filter(({ stage }) => stage === "existing" || stage === "rough-in");
  let total = 0;
  let outside = 0;
  for (const systemId of new Set(early.map((each) => each.systemId))) {
    const of = (measure: Measurement["measure"]) =>
      early.find((each) => each.systemId === systemId && each.measure === measure)?.cfm25;
    const [all, out] = [of("total"), of("toOutside")];
    if (all === undefined || out === undefined) continue;
    total += all;
    outside += out;
  }
  return total > 0 ? Math.min(1, outside / total) : null;
}

/**
 * What both tests say of the share that reaches outside from places where it was not measured: the measured leakage to
 * outside, less what the leaks seen outside the boundary bring, over the leaks seen in those places. Null where the
 * tests or the leaks seen do not tell. Source: derived (a balance of the leaks seen, scaled to the total).
 */
function shareByTests({ places, sites, measurements }: Input, isAssumed: (place: number) => boolean): Share | null {
  const ratio = measuredRatio(measurements);
  if (ratio === null) return null;
  let all = 0;
  let outside = 0;
  let assumed = 0;
  for (const { priorCfm25, placeIndex } of sites) {
    all += priorCfm25;
    if (!places[placeIndex]!.isInsideBoundary) outside += priorCfm25;
    else if (isAssumed(placeIndex)) assumed += priorCfm25;
  }
  if (!(assumed > 0)) return null;
  const value = (ratio * all - outside) / assumed;
  const doubt = DOUBT_OF_SIZES_RATIO * (Math.max(0, value) + outside / assumed);
  return { value: Math.min(1, Math.max(0, value)), doubt: Math.max(MEASURED_SHARE_DOUBT, doubt) };
}

/** Two judgments of one share, weighted by how sure each is. */
function together(one: Share, other: Share): Share {
  const [first, second] = [1 / one.doubt ** 2, 1 / other.doubt ** 2];
  return { value: (first * one.value + second * other.value) / (first + second), doubt: 1 / Math.sqrt(first + second) };
}

/**
 * The share of a leak in each place that a to-outside test sees: by the zone's pressure where it was measured; else the
 * usual share of this kind of place, drawn toward what total and to-outside tests say together. Each one assumed is listed.
 */
export function completeOutsideShares(input: Input): PlaceModel[] {
  const { job, places, ledger, space } = input;
  const given = (index: number) => job.places[index]?.houseToZonePressurePa;
  const isAssumed = (index: number) =>
    given(index) === undefined && PLACE_DEFAULTS[places[index]!.kind].toOutsideShareDoubt > 0;
  const byTests = shareByTests(input, isAssumed);
  return places.map((place, index) => {
    const defaults = PLACE_DEFAULTS[place.kind];
    let share: Share = { value: defaults.toOutsideShare, doubt: defaults.toOutsideShareDoubt };
    const pressurePa = given(index);
    if (pressurePa !== undefined) {
      const outsidePa = job.places[index]!.houseToOutsidePressurePa ?? TEST_PRESSURE_PA;
      share = { value: Math.min(1, pressurePa / outsidePa) ** SERIES_EXPONENT, doubt: MEASURED_SHARE_DOUBT };
    } else if (isAssumed(index)) {
      if (byTests) share = together(share, byTests);
      ledger.take<number>(undefined, {
        path: `#/places/${index}/houseToZonePressurePa`,
        title: `Share of a leak into the ${place.label} that reaches outside`,
        value: share.value,
        unit: "share",
        reason: byTests
          ? "No zone pressure was measured: a common share for this kind of place, drawn toward what the tests of total leakage and of leakage to outside say together."
          : "No zone pressure was measured, so a common share for this kind of place is taken.",
        source: byTests ? { sourceId: "derived" } : practice,
        low: Math.max(0, share.value - 1.28 * share.doubt),
        high: Math.min(1, share.value + 1.28 * share.doubt),
      });
    }
    return {
      ...place,
      toOutsideShareAt: space.add({
        key: `places/${place.id}/toOutsideShare`,
        group: "outside",
        base: share.value,
        spread: { shape: "absolute", standardUncertainty: share.doubt, min: 0, max: 1 },
      }),
    };
  });
}
