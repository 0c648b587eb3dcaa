import { createReconciler, type Reconciler } from "#lib/apportion/create-reconciler.ts";
import type { HouseModel } from "../complete/complete-house.ts";
import type { GroupMeasurement, LeakGroup } from "../complete/complete-leak-groups.ts";
import type { WorkPlan } from "./house-kernel.ts";
import { CELLS, type HouseState } from "./house-state.ts";

/** Weight of a quarter not yet found, and the least doubt of a found leak, of the largest measurement. See METHODS. */
const QUARTER_VARIANCE_SHARE = 0.25;
const LEAST_SPREAD_RATIO = 0.005;
/** After the work a leak's own doubt is at least this share of what was expected to be left. Source: practice. */
const RESIDUAL_DOUBT_RATIO = 0.5;

/** Makes the leaks agree with what was measured, before the work and after it. */
export interface SiteApportioner {
  fillBefore(parameters: Float64Array, out: HouseState): void;
  fillAfter(input: {
    parameters: Float64Array;
    before: HouseState;
    plan: WorkPlan;
    isVerified: boolean;
    out: HouseState;
  }): void;
}

/** A reading as this draw has it: its own error, and the fan's and the exponent's that other readings share. */
function drawnReading(measurement: GroupMeasurement, parameters: Float64Array): number {
  const error =
    measurement.randomRatio * parameters[measurement.randomAt]! +
    measurement.fanRatio * parameters[measurement.fanAt]! +
    measurement.exponentRatio * parameters[measurement.exponentAt]!;
  return Math.max(0, measurement.cfm25 * (1 + error));
}

function largestReading(measurements: readonly GroupMeasurement[]): number {
  return Math.max(0, ...measurements.map((each) => each.cfm25));
}

interface GroupSolvers {
  before: Reconciler;
  after: Reconciler | null;
  spreadOfQuarterBefore: number;
  spreadOfQuarterAfter: number;
}

function createSolvers(house: HouseModel, group: LeakGroup): GroupSolvers {
  const sides = group.siteIndexes.map((i) => house.sites[i]!.side);
  const solver = (measurements: readonly GroupMeasurement[]) =>
    createReconciler({ sides, measurements: measurements.map((each) => each.measure) });
  const largest =
    largestReading(group.before) || group.siteIndexes.reduce((sum, i) => sum + house.sites[i]!.priorCfm25, 0);
  const before = solver(group.before);
  group.siteIndexes.forEach((i, k) => {
    const site = house.sites[i]!;
    before.spreadsCfm25[k] = Math.max(site.priorRelativeUncertainty * site.priorCfm25, LEAST_SPREAD_RATIO * largest);
  });
  group.before.forEach((each, k) => {
    before.standardUncertaintiesCfm25[k] = each.standardUncertaintyCfm25;
  });
  const after = group.after.length > 0 ? solver(group.after) : null;
  group.after.forEach((each, k) => {
    after!.standardUncertaintiesCfm25[k] = each.standardUncertaintyCfm25;
  });
  const root = Math.sqrt(QUARTER_VARIANCE_SHARE);
  return {
    before,
    after,
    spreadOfQuarterBefore: root * largest,
    spreadOfQuarterAfter: root * largestReading(group.after),
  };
}

export function createSiteApportioner(house: HouseModel): SiteApportioner {
  const solvers = house.groups.map((group) => createSolvers(house, group));

  function setShares(reconciler: Reconciler, group: LeakGroup, parameters: Float64Array): void {
    for (let k = 0; k < group.siteIndexes.length; k++) {
      const place = house.places[house.sites[group.siteIndexes[k]!]!.placeIndex]!;
      reconciler.toOutsideShares[k] = parameters[place.toOutsideShareAt]!;
    }
  }

  function solveInto(reconciler: Reconciler, groupIndex: number, out: HouseState): void {
    reconciler.solve();
    const { siteIndexes } = house.groups[groupIndex]!;
    for (let k = 0; k < siteIndexes.length; k++) out.siteCfm25[siteIndexes[k]!] = reconciler.leaksCfm25[k]!;
    for (let c = 0; c < CELLS.length; c++) {
      out.cellCfm25[groupIndex]![c] = reconciler.leaksCfm25[siteIndexes.length + c]!;
    }
  }

  function fillBefore(parameters: Float64Array, out: HouseState): void {
    for (let g = 0; g < house.groups.length; g++) {
      const group = house.groups[g]!;
      const { before, spreadOfQuarterBefore } = solvers[g]!;
      setShares(before, group, parameters);
      const sites = group.siteIndexes.length;
      for (let k = 0; k < sites; k++) {
        before.priorsCfm25[k] = parameters[house.sites[group.siteIndexes[k]!]!.priorAt]!;
      }
      const hasReadings = group.before.length > 0;
      for (let c = 0; c < CELLS.length; c++) {
        before.spreadsCfm25[sites + c] = hasReadings ? spreadOfQuarterBefore : 0;
        before.priorsCfm25[sites + c] = hasReadings ? spreadOfQuarterBefore * parameters[group.quarterAt[c]!]! : 0;
      }
      for (let k = 0; k < group.before.length; k++) {
        before.measuredCfm25[k] = drawnReading(group.before[k]!, parameters);
      }
      solveInto(before, g, out);
    }
  }

  /** What the plan leaves of each leak, as expected from the repairs. */
  function fillPredicted(parameters: Float64Array, before: HouseState, plan: WorkPlan, out: HouseState): void {
    for (let i = 0; i < house.sites.length; i++) {
      const hand = plan.remainingAt[i]!;
      const spray = plan.sprayAt[i]!;
      const left = (hand < 0 ? 1 : parameters[hand]!) * (spray < 0 ? 1 : parameters[spray]!);
      out.siteCfm25[i] = before.siteCfm25[i]! * left;
    }
    for (let g = 0; g < house.groups.length; g++) {
      const { systemIndexes } = house.groups[g]!;
      let served = 0;
      let left = 0;
      for (let k = 0; k < systemIndexes.length; k++) {
        const s = systemIndexes[k]!;
        const at = plan.unfoundRemainingAt[s]!;
        served += house.systems[s]!.servedShare;
        left += house.systems[s]!.servedShare * (at < 0 ? 1 : parameters[at]!);
      }
      for (let c = 0; c < CELLS.length; c++) out.cellCfm25[g]![c] = (before.cellCfm25[g]![c]! * left) / served;
    }
  }

  return {
    fillBefore,
    fillAfter({ parameters, before, plan, isVerified, out }) {
      fillPredicted(parameters, before, plan, out);
      if (!isVerified) return;
      for (let g = 0; g < house.groups.length; g++) {
        const group = house.groups[g]!;
        const { after, spreadOfQuarterAfter } = solvers[g]!;
        if (!after) continue;
        setShares(after, group, parameters);
        const sites = group.siteIndexes.length;
        const least = 2 * LEAST_SPREAD_RATIO * spreadOfQuarterAfter;
        for (let k = 0; k < sites; k++) {
          const expected = out.siteCfm25[group.siteIndexes[k]!]!;
          after.priorsCfm25[k] = expected;
          after.spreadsCfm25[k] = Math.max(RESIDUAL_DOUBT_RATIO * expected, least);
        }
        for (let c = 0; c < CELLS.length; c++) {
          after.priorsCfm25[sites + c] = out.cellCfm25[g]![c]!;
          after.spreadsCfm25[sites + c] = spreadOfQuarterAfter;
        }
        for (let k = 0; k < group.after.length; k++) {
          after.measuredCfm25[k] = drawnReading(group.after[k]!, parameters);
        }
        solveInto(after, g, out);
      }
    },
  };
}
