import type { HouseModel } from "./complete/complete-house.ts";
import { createHouseKernel, type WorkPlan } from "./kernel/house-kernel.ts";
import { CELLS } from "./kernel/house-state.ts";
import { outputKey } from "./kernel/write-outputs.ts";
import { doNothing } from "./work-plan.ts";

/** What each leak is and costs, before anything is decided. */
export interface SiteWorth {
  totalCfm25: number;
  totalStandardUncertaintyCfm25: number;
  toOutsideCfm25: number;
  toOutsideStandardUncertaintyCfm25: number;
  sites: readonly {
    cfm25: number;
    standardUncertaintyCfm25: number;
    toOutsideShare: number;
    operatingCfm: number;
    usdPerYear: number;
  }[];
  unfound: readonly { systemId: string; cfm25: number; toOutsideCfm25: number; usdPerYear: number }[];
  /** What all leaks together cost a year: the price of doing nothing. */
  allUsdPerYear: number;
}

/** A plan that closes one thing wholly; `zeroAt` is a parameter that is always 0. */
function closing(
  house: HouseModel,
  zeroAt: number,
  id: string,
  sites: readonly number[],
  systems: readonly number[],
): WorkPlan {
  const plan = doNothing(house, id);
  for (const site of sites) plan.remainingAt[site] = zeroAt;
  for (const system of systems) plan.unfoundRemainingAt[system] = zeroAt;
  return plan;
}

/**
 * Values every leak by closing it alone and evaluating the whole house again, so that pressures, places, equipment and
 * regain all have their say. Source: own-method. Left out: that closing several together is worth a little less.
 */
export function valueLeaks(house: HouseModel): SiteWorth {
  const zeroAt = house.zeroAt;
  const everySite = [...house.sites.keys()];
  const everySystem = [...house.systems.keys()];
  const plans = [
    closing(house, zeroAt, "everything", everySite, everySystem),
    ...everySite.map((site) => closing(house, zeroAt, `site ${site}`, [site], [])),
    ...everySystem.map((system) => closing(house, zeroAt, `unfound ${system}`, [], [system])),
  ];
  const kernel = createHouseKernel(house, plans, { isVerified: false });
  const out = new Float64Array(kernel.layout.keys.length);
  kernel.evaluate(house.space.base(), out);
  const read = (key: string) => out[kernel.layout.at(key)]!;
  const saved = (plan: number) => read(outputKey.plan(plan, "savedUsd"));
  const totalCfm25 = read(outputKey.leakage("house", "total"));
  const toOutsideCfm25 = read(outputKey.leakage("house", "toOutside"));
  const measured = (isOutside: boolean) => {
    const parts = house.groups.flatMap((group) =>
      group.before.filter((each) => each.measure === (isOutside ? "toOutside" : "total")),
    );
    return Math.hypot(...parts.map((each) => each.standardUncertaintyCfm25));
  };
  // What was not measured is as doubtful as the leaks' own first guesses.
  const guessed = Math.hypot(...house.sites.map((site) => site.priorRelativeUncertainty * site.priorCfm25));
  return {
    totalCfm25,
    totalStandardUncertaintyCfm25: measured(false) || guessed,
    toOutsideCfm25,
    toOutsideStandardUncertaintyCfm25: measured(true) || measured(false) || guessed,
    sites: house.sites.map((site, index) => {
      const cfm25 = read(outputKey.site(site.id, "cfm25"));
      return {
        cfm25,
        standardUncertaintyCfm25: Math.min(site.priorRelativeUncertainty * site.priorCfm25, cfm25),
        toOutsideShare: house.space.parameters[house.places[site.placeIndex]!.toOutsideShareAt]!.base,
        operatingCfm: read(outputKey.site(site.id, "operatingCfm")),
        usdPerYear: saved(1 + index),
      };
    }),
    unfound: house.systems.flatMap((system, index) => {
      const group = house.groups.findIndex((each) => each.systemIndexes.includes(index));
      const served = house.groups[group]!.systemIndexes.reduce((sum, s) => sum + house.systems[s]!.servedShare, 0);
      const part = system.servedShare / served;
      const cells = CELLS.map((cell, c) => ({ ...cell, cfm25: read(outputKey.cell(group, c)) * part }));
      const cfm25 = cells.reduce((sum, cell) => sum + cell.cfm25, 0);
      const outside = cells.reduce((sum, cell) => sum + (cell.isOutside ? cell.cfm25 : 0), 0);
      return cfm25 > 0
        ? [{ systemId: system.id, cfm25, toOutsideCfm25: outside, usdPerYear: saved(1 + house.sites.length + index) }]
        : [];
    }),
    allUsdPerYear: saved(0),
  };
}
