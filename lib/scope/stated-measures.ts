import type { JobMeasures } from "./job-measures.ts";
import { coveredId, coveringRepairId } from "./leaks-of-one-run.ts";
import { measureId } from "./measure-details.ts";

interface StatedMeasure {
  siteId: string;
  repairId: string;
}

const isSame = (one: StatedMeasure, other: StatedMeasure): boolean =>
  one.siteId === other.siteId && one.repairId === other.repairId;

/**
 * Measures stated by hand, those by hand before those that reach a whole system. New duct brings with it the leaks that
 * it covers, stated or not. Measures whose leak or repair does not exist or does not fit, a second one for the same
 * leak, and a repair of its own for a leak that new duct covers are `unknown` and left out.
 */
export function statedMeasures(
  { details, exclusions, prerequisites }: Pick<JobMeasures, "details" | "exclusions" | "prerequisites">,
  measures: readonly StatedMeasure[],
): { byHand: readonly StatedMeasure[]; sprays: readonly StatedMeasure[]; unknown: readonly StatedMeasure[] } {
  const asked = measures.filter(({ siteId, repairId }) => details.has(measureId(siteId, repairId)));
  const isDone = (siteId: string, repairId: string | null) =>
    asked.some((each) => isSame(each, { siteId, repairId: repairId ?? "" }));
  const covered = prerequisites
    .filter(({ repair, needs }) => coveringRepairId(repair.repairId) !== null && isDone(needs.leakId, needs.repairId))
    .map(({ repair }): StatedMeasure => ({ siteId: repair.leakId, repairId: repair.repairId }));
  const ruledOut = exclusions
    .filter(([main, alone]) =>
      covered.some((each) => isSame(each, { siteId: alone.leakId, repairId: coveredId(main.repairId) })),
    )
    .map(([, alone]): StatedMeasure => ({ siteId: alone.leakId, repairId: alone.repairId }));
  const stands = (measure: StatedMeasure): boolean =>
    coveringRepairId(measure.repairId) === null
      ? !ruledOut.some((each) => isSame(each, measure))
      : covered.some((each) => isSame(each, measure));
  const standing = asked.filter(stands);
  const first = standing.filter(
    ({ siteId }, index) => standing.findIndex((measure) => measure.siteId === siteId) === index,
  );
  const known = [...first, ...covered.filter(({ siteId }) => !first.some((each) => each.siteId === siteId))];
  const isSpray = ({ siteId, repairId }: StatedMeasure) =>
    details.get(measureId(siteId, repairId))!.repair.reachesWholeSystem;
  return {
    byHand: known.filter((measure) => !isSpray(measure)),
    sprays: known.filter(isSpray),
    unknown: measures.filter((measure) => !first.includes(measure)),
  };
}
