import { type LeakageMeasurements, leakageReconciliation } from "#lib/apportion/leakage-reconciliation.ts";
import { type MeasurementName, seenShare } from "#lib/apportion/measurement-rows.ts";
import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import type { Side } from "#lib/job/duct-system.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { LeakKindId } from "#lib/job/leak-kinds.ts";
import type { Cfm } from "#lib/units/quantity.ts";
import { completeHouse, type HouseModel } from "./complete/complete-house.ts";
import type { LeakGroup } from "./complete/complete-leak-groups.ts";
import { elevationOf } from "./elevation-of.ts";
import { createLedger } from "./ledger.ts";
import { readTests } from "./read-tests.ts";

/** What the walk through one system knows and does not know yet, before the work. */
export interface LeakWalk {
  systemIds: readonly string[];
  /** What was measured, the surest of each kind. */
  measured: readonly { name: MeasurementName; cfm25: Cfm; standardUncertaintyCfm25: Cfm }[];
  sites: readonly { id: string; cfm25: Cfm; standardUncertaintyCfm25: Cfm }[];
  notYetFound: readonly { side: Side; outside: boolean; cfm25: Cfm; standardUncertaintyCfm25: Cfm }[];
  /** Measurements that the found leaks, by their size to the eye, exceed by more than the doubt of both. */
  foundAbove: readonly { name: MeasurementName; measuredCfm25: Cfm; lookedLikeCfm25: Cfm }[];
  /** The measurement still open whose outcome is the least sure: it would tell most. */
  tellsMost: { name: MeasurementName; expectedCfm25: Cfm; standardUncertaintyCfm25: Cfm } | null;
  /** The quarter that hides most, where its ducts run, and what usually leaks there and was not seen yet. */
  lookNext: { side: Side; outside: boolean; placeIds: readonly string[]; kinds: readonly LeakKindId[] } | null;
}

/** Beyond this many standard uncertainties a surplus is no chance any more (one in twenty, one-sided). */
const CLEAR_SURPLUS_Z = 1.645;
/** Less hidden than this share of the largest measurement is not worth another round. Source: practice. */
const WORTH_LOOKING_SHARE = 0.1;
const DRAWS = 200;

/** What usually leaks on each side, the largest first. Source: practice. */
const USUAL_KINDS: Readonly<Record<Side, readonly LeakKindId[]>> = {
  supply: ["disconnected-run", "plenum-joint", "missing-end-cap", "take-off", "boot-to-drywall", "air-handler-cabinet"],
  return: [
    "platform-return",
    "panned-joist-return",
    "building-cavity",
    "filter-slot",
    "air-handler-cabinet",
    "plenum-joint",
  ],
};
/** In a manufactured home these come first. Source: practice. */
const MANUFACTURED_KINDS: readonly LeakKindId[] = ["crossover", "belly"];
const MOST_KINDS_TOLD = 3;

/**
 * Where the walk stands after each leak: the same reconciliation as the estimate, at its best estimates, with what is not
 * yet found by quarter, what to measure and where to look next. Source: own-method (leakage reconciliation).
 * @throws InputProblem when a value of the job is outside what a method can answer.
 */
export function leakWalk(job: Job, reference: ReferenceData): LeakWalk[] {
  const ledger = createLedger();
  const elevationFt = elevationOf(job, reference);
  const measurements = readTests({ job, elevationFt, ledger });
  const house = completeHouse({ job, reference, measurements, ledger });
  return house.groups.map((group) => walkOf(house, group));
}

function walkOf(house: HouseModel, group: LeakGroup): LeakWalk {
  const parameters = house.space.base();
  const sites = group.siteIndexes.map((index) => {
    const { id, side, placeIndex, priorCfm25, priorRelativeUncertainty } = house.sites[index]!;
    const toOutsideShare = parameters[house.places[placeIndex]!.toOutsideShareAt]!;
    return { id, side, toOutsideShare, priorCfm25, priorRelativeUncertainty };
  });
  const measured = group.before.map(({ measure, cfm25, standardUncertaintyCfm25 }) => ({
    name: measure,
    cfm25,
    standardUncertaintyCfm25,
  }));
  const answer = leakageReconciliation({
    measurements: Object.fromEntries(measured.map(({ name, ...rest }) => [name, rest])) as LeakageMeasurements,
    sites,
    draws: DRAWS,
  });
  const isMeasured = measured.length > 0;
  return {
    systemIds: group.systemIndexes.map((index) => house.systems[index]!.id),
    measured,
    sites: answer.sites.map(({ id, cfm25, standardUncertaintyCfm25 }) => ({ id, cfm25, standardUncertaintyCfm25 })),
    notYetFound: isMeasured ? answer.notYetFound : [],
    foundAbove: answer.measurements
      .filter(({ surplusZ }) => surplusZ > CLEAR_SURPLUS_Z)
      .map(({ name }) => ({
        name,
        measuredCfm25: measured.find((each) => each.name === name)!.cfm25,
        lookedLikeCfm25: lookedLike(name, sites),
      })),
    tellsMost: answer.tellsMost,
    lookNext: isMeasured
      ? lookNext(house, group, answer.notYetFound, Math.max(...measured.map(({ cfm25 }) => cfm25)))
      : null,
  };
}

/** What a measurement would have read, were every found leak as large as it looks. */
function lookedLike(
  name: MeasurementName,
  sites: readonly { side: Side; toOutsideShare: number; priorCfm25: Cfm }[],
): Cfm {
  return sites.reduce(
    (sum, { side, toOutsideShare, priorCfm25 }) => sum + seenShare(name, side, toOutsideShare) * priorCfm25,
    0,
  );
}

function lookNext(
  house: HouseModel,
  group: LeakGroup,
  quarters: LeakWalk["notYetFound"],
  largestCfm25: Cfm,
): LeakWalk["lookNext"] {
  const [most] = [...quarters].sort((a, b) => b.cfm25 - a.cfm25);
  const hiddenCfm25 = quarters.reduce((sum, { cfm25 }) => sum + cfm25, 0);
  if (!most || hiddenCfm25 < WORTH_LOOKING_SHARE * largestCfm25) return null;
  const { side, outside } = most;
  const areaAt = (place: number) =>
    group.systemIndexes.reduce((sum, s) => {
      const { ducts } = house.systems[s]!;
      return sum + (side === "supply" ? ducts.supplyAreaFt2 : ducts.returnAreaFt2)[place]!;
    }, 0);
  const placeIds = house.places
    .map((place, index) => ({ place, areaFt2: areaAt(index) }))
    .filter(({ place, areaFt2 }) => areaFt2 > 0 && place.isInsideBoundary !== outside)
    .sort((a, b) => b.areaFt2 - a.areaFt2)
    .map(({ place }) => place.id);
  const { sites, house: building } = house.job;
  const systemIds = new Set(group.systemIndexes.map((s) => house.systems[s]!.id));
  const seen = new Set(
    sites.filter((site) => site.side === side && systemIds.has(site.systemId)).map(({ kind }) => kind),
  );
  const candidates = [...(building.kind === "manufactured" ? MANUFACTURED_KINDS : []), ...USUAL_KINDS[side]];
  const kinds = candidates.filter((kind) => !seen.has(kind)).slice(0, MOST_KINDS_TOLD);
  return { side, outside, placeIds, kinds };
}
