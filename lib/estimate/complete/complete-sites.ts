import { orificeFlow } from "#lib/air/orifice-area.ts";
import type { Job } from "#lib/job/job-schema.ts";
import {
  BAND_DOUBT_RATIO,
  LEAK_KINDS,
  leakageOfBand,
  MEASURED_GAP_DOUBT_RATIO,
  PRESSURE_GROUPS,
  UNKNOWN_SIZE_DOUBT_RATIO,
} from "#lib/job/leak-kinds.ts";
import type { LeakSite } from "#lib/job/leak-site.ts";
import type { Ledger } from "../ledger.ts";
import type { ParameterSpace } from "../parameter-space.ts";
import type { PlaceBefore } from "./complete-places.ts";

/** One leak with its gaps filled. */
export interface SiteModel {
  id: string;
  systemIndex: number;
  side: "supply" | "return";
  placeIndex: number;
  priorAt: number;
  priorCfm25: number;
  priorRelativeUncertainty: number;
  pressureFractionAt: number;
}

interface Prior {
  cfm25: number;
  relativeUncertainty: number;
}

const practice = { sourceId: "practice" } as const;

/** What the eye, the tape or the pressure pan tells of a leak before the house's own test is heard. */
function firstGuess(site: LeakSite, pointer: string, ledger: Ledger): Prior {
  const { size } = site;
  if (size?.from === "gap") {
    return {
      cfm25: orificeFlow({ areaIn2: size.gapLengthIn * size.gapWidthIn, pressurePa: 25 }).leakageCfm,
      relativeUncertainty: MEASURED_GAP_DOUBT_RATIO,
    };
  }
  if (size?.from === "estimate") {
    const doubt = ledger.take(size.relativeUncertaintyRatio, {
      path: `${pointer}/size/relativeUncertaintyRatio`,
      title: `Doubt of the estimated size of ${site.label ?? site.id}`,
      value: 0.5,
      unit: "ratio",
      reason: "An estimate by eye may well be off by half.",
      source: practice,
    });
    return { cfm25: size.estimateCfm25, relativeUncertainty: doubt };
  }
  if (size?.from === "band")
    return { cfm25: leakageOfBand(site.kind, size.band), relativeUncertainty: BAND_DOUBT_RATIO };
  const cfm25 = ledger.take<number>(undefined, {
    path: `${pointer}/size`,
    title: `Size of ${site.label ?? LEAK_KINDS[site.kind].label}`,
    value: leakageOfBand(site.kind),
    unit: "cfm at 25 Pa",
    reason: "Nothing was said about its size, so the usual gap of this kind of leak is taken.",
    source: practice,
  });
  return { cfm25, relativeUncertainty: UNKNOWN_SIZE_DOUBT_RATIO };
}

/**
 * Spreads the leakage that pans point at over the sites with a reading: prior = total × pan / sum of pans.
 * A pan reading only ranks, so its doubt is as large as itself. Source: practice.
 */
function panShares(job: Job): Map<string, number> {
  const withPan = job.sites.filter((site) => site.size === undefined && site.panPressurePa !== undefined);
  const sum = withPan.reduce((total, site) => total + site.panPressurePa!, 0);
  return new Map(sum > 0 ? withPan.map((site) => [site.id, site.panPressurePa! / sum]) : []);
}

/** Every leak with its first guess of size and the pressure behind it while the system runs. */
export function completeSites({
  job,
  places,
  measuredTotalCfm25,
  ledger,
  space,
}: {
  job: Job;
  places: readonly PlaceBefore[];
  measuredTotalCfm25: number | null;
  ledger: Ledger;
  space: ParameterSpace;
}): SiteModel[] {
  const systemIndex = new Map(job.systems.map((system, index) => [system.id, index]));
  const placeIndex = new Map(places.map((place, index) => [place.id, index]));
  const shares = panShares(job);
  return job.sites.map((site, index) => {
    const share = shares.get(site.id);
    const prior: Prior =
      share !== undefined && measuredTotalCfm25 !== null
        ? { cfm25: share * measuredTotalCfm25, relativeUncertainty: 1 }
        : firstGuess(site, `#/sites/${index}`, ledger);
    const pressureFraction = PRESSURE_GROUPS[LEAK_KINDS[site.kind].pressureGroup];
    return {
      id: site.id,
      systemIndex: systemIndex.get(site.systemId)!,
      side: site.side,
      placeIndex: placeIndex.get(site.placeId)!,
      priorCfm25: prior.cfm25,
      priorRelativeUncertainty: prior.relativeUncertainty,
      priorAt: space.add({
        key: `sites/${site.id}/prior`,
        group: "sites",
        base: prior.cfm25,
        spread: {
          shape: "absolute",
          standardUncertainty: prior.relativeUncertainty * prior.cfm25,
          min: 0,
          max: 20 * prior.cfm25 + 1,
        },
      }),
      pressureFractionAt: space.add({
        key: `sites/${site.id}/pressureFraction`,
        group: "operating",
        base: pressureFraction,
        // A cabinet feels the whole plenum pressure; nearer the rooms the fraction is a guess. Source: practice.
        spread: { shape: "relative", standardUncertainty: pressureFraction === 1 ? 0.05 : 0.3, min: 0.02, max: 1 },
      }),
    };
  });
}
