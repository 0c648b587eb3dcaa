import type { LeakSite } from "#lib/job/leak-site.ts";
import { type MeasureDetail, measureId } from "./measure-details.ts";
import type { ScopeProblem } from "./scope-problem.ts";

const COVERED_BY = "covered-by-";

/** A leak that is closed by new duct put in at another leak of its run: no hours, no material, no price of its own. */
export const coveredId = (repairId: string): string => `${COVERED_BY}${repairId}`;

/** The repair at the other leak that closes this one; null for a repair of its own. */
export const coveringRepairId = (repairId: string): string | null =>
  repairId.startsWith(COVERED_BY) ? repairId.slice(COVERED_BY.length) : null;

export const coveredTitle = (title: string): string => `Closed with: ${title}`;

function coveredMeasure(site: LeakSite, covering: MeasureDetail): MeasureDetail {
  const { repair, title, place } = covering;
  return {
    id: measureId(site.id, coveredId(repair.id)),
    siteId: site.id,
    repair: { ...repair, id: coveredId(repair.id), title: coveredTitle(title), steps: [], materials: [] },
    title: coveredTitle(title),
    place,
    labourHours: 0,
    materials: [],
    replacesDuct: false,
  };
}

export interface RunRules extends Pick<ScopeProblem, "exclusions" | "prerequisites"> {
  /** Measures by hand with those that come with new duct, in step with the leaks. */
  byHand: readonly (readonly MeasureDetail[])[];
}

/**
 * What leaks on one run or return path mean for each other, by what the repairs say of themselves:
 * new duct at the leak that stands for the run closes the leaks that it covers, which then take no repair of their own;
 * any other repair on the run makes sense only once that leak is repaired, since air lost there never reaches it.
 * Source: practice, in the repairs.
 */
export function leaksOfOneRun(sites: readonly LeakSite[], byHand: RunRules["byHand"]): RunRules {
  const exclusions: ScopeProblem["exclusions"][number][] = [];
  const prerequisites: ScopeProblem["prerequisites"][number][] = [];
  const measures = sites.map((site, index) => {
    const mainAt = sites.findIndex(({ id }) => id === site.partOfSiteId);
    if (mainAt < 0 || site.isSuspectedAsbestos) return byHand[index]!;
    const mainId = sites[mainAt]!.id;
    const covering = byHand[mainAt]!.filter(({ repair }) => repair.covers?.includes(site.kind));
    // A run is replaced once, at the leak that stands for it.
    const own = byHand[index]!.filter(({ repair }) => !covering.some((detail) => detail.repair.id === repair.id));
    for (const { repair } of own) {
      const alone = { leakId: site.id, repairId: repair.id };
      prerequisites.push({ repair: alone, needs: { leakId: mainId, repairId: null } });
      for (const detail of covering) exclusions.push([{ leakId: mainId, repairId: detail.repair.id }, alone]);
    }
    for (const detail of covering) {
      const main = { leakId: mainId, repairId: detail.repair.id };
      const covered = { leakId: site.id, repairId: coveredId(detail.repair.id) };
      prerequisites.push({ repair: covered, needs: main }, { repair: main, needs: covered });
    }
    return [...own, ...covering.map((detail) => coveredMeasure(site, detail))];
  });
  return { byHand: measures, exclusions, prerequisites };
}
