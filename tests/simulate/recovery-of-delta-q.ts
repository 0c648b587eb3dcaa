import { deltaQFit } from "#lib/measure/delta-q-fit.ts";
import { readDeltaQ } from "#lib/simulate/readings/delta-q.ts";
import { trueOperation } from "#lib/simulate/truth.ts";
import { observerNumber, randomHouseNumber } from "./known-house.ts";
import { type Attempt, attempt } from "./recovery.ts";

/** Supply and return leakage to outside while running, of each house, in gusts of this standard deviation. */
export function deltaQOverHouses(count: number, gustPa: number): Attempt[] {
  return Array.from({ length: count }, (_, k) => {
    const house = randomHouseNumber(k);
    const { fanFlowCfm, toOutsideCfm } = trueOperation(house);
    const points = readDeltaQ({ house, observer: observerNumber(k), gustPa });
    const fit = deltaQFit({ points, airHandlerFlowCfm: fanFlowCfm });
    return [
      attempt(toOutsideCfm.supply, () => ({
        foundCfm: fit.supplyLeakageCfm,
        uncertaintyCfm: fit.standardErrors.supplyLeakageCfm,
      })),
      attempt(toOutsideCfm.return, () => ({
        foundCfm: fit.returnLeakageCfm,
        uncertaintyCfm: fit.standardErrors.returnLeakageCfm,
      })),
    ];
  }).flat();
}

/** Share of the values that are not more than twice their own doubt: leakage not told from none. */
export function shareWithinDoubt(attempts: readonly Attempt[]): number {
  const told = attempts.filter((each) => each.said === "value" && each.foundCfm > 2 * each.uncertaintyCfm);
  return 1 - told.length / attempts.length;
}

/** Mean stated doubt, in cfm. */
export function meanDoubt(attempts: readonly Attempt[]): number {
  const doubts = attempts.map((each) => (each.said === "value" ? each.uncertaintyCfm : 0));
  return doubts.reduce((sum, doubt) => sum + doubt, 0) / doubts.length;
}
