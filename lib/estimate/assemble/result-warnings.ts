import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import type { SystemResult } from "#lib/job/result/leakage-result.ts";
import { formatNumber } from "#lib/units/format.ts";
import type { HouseModel } from "../complete/complete-house.ts";
import type { HouseKernel } from "../kernel/house-kernel.ts";
import type { Ledger } from "../ledger.ts";

interface Input {
  house: HouseModel;
  kernel: HouseKernel;
  ledger: Ledger;
  reference: ReferenceData;
  systems: readonly SystemResult[];
  outOfReach: readonly string[];
}

/** More air than this share to the rooms is worth telling. */
const CLEARLY_MORE_AIR = 0.05;
const MOST_LEAK_SHARE = 0.6;

/** Writes down what the evaluated house makes doubtful or dangerous, and returns the reasons besides money. */
export function warnOfResult({ house, kernel, ledger, reference, systems, outOfReach }: Input): string[] {
  for (const warning of reference.warnings) ledger.warn({ ...warning });
  const reasons: string[] = [];
  house.systems.forEach((system, s) => {
    const was = kernel.before.systems[s]!;
    const is = kernel.after.systems[s]!;
    const path = `#/systems/${s}`;
    const { airflow } = systems[s]!;
    if (system.nameplateStaticPa !== null && is.externalStaticPa > system.nameplateStaticPa) {
      ledger.warn({
        code: "static-above-nameplate",
        path: `${path}/blower/nameplateStaticPa`,
        severity: "problem",
        what: `After the work the static pressure of ${system.label} is about ${formatNumber(is.externalStaticPa)} Pa, above the nameplate's ${formatNumber(system.nameplateStaticPa)} Pa${was.externalStaticPa > system.nameplateStaticPa ? ", as it is already" : ""}.`,
        why: "Tight ducts pass less air at the same pressure, so the blower works harder and the equipment may overheat or freeze.",
        nextMove: "Plan a larger return, filter or duct together with the sealing, and measure again after it.",
      });
    }
    if (Math.max(was.leaks.supplyAllCfm, was.leaks.returnAllCfm) > MOST_LEAK_SHARE * was.fanFlowCfm) {
      ledger.warn({
        code: "leaks-above-fan-flow",
        path: `${path}/blower/fanFlowCfm`,
        severity: "problem",
        what: `The leaks of ${system.label} would pass ${formatNumber(Math.max(was.leaks.supplyAllCfm, was.leaks.returnAllCfm))} cfm while it runs, with a fan flow of ${formatNumber(was.fanFlowCfm)} cfm.`,
        why: "So little air would reach the rooms that a reading is likely wrong, or the leaks sit where the pressure is lower.",
        nextMove: "Measure the fan flow and the static pressures, and look at the largest leak again.",
      });
    }
    for (const mode of ["heating", "cooling"] as const) {
      const state = was.modes[mode];
      if (!state) continue;
      const indoor = mode === "heating" ? house.loads.indoor.heatingF : house.loads.indoor.coolingF;
      const register = systems[s]!.distribution[mode]!.registerDesignF;
      if (mode === "heating" ? register < indoor : register > indoor) {
        ledger.warn({
          code: "register-no-use",
          path,
          severity: "problem",
          what: `On the ${mode} design day the air at the registers of ${system.label} would be ${formatNumber(register)} °F.`,
          why:
            mode === "heating"
              ? "That is colder than the room, so the ducts take more than the equipment gives."
              : "That is warmer than the room, so the ducts take more than the equipment gives.",
          nextMove:
            "Check capacity, fan flow and duct insulation. If they are right, the ducts need more than sealing.",
        });
      }
    }
    const gain = airflow.deliveredAfterCfm / airflow.deliveredBeforeCfm - 1;
    if (gain >= CLEARLY_MORE_AIR)
      reasons.push(`The rooms that ${system.label} serves get about ${Math.round(100 * gain)} % more air.`);
  });
  const unfoundCfm25 = kernel.before.cellCfm25.reduce(
    (sum, cells) => sum + cells.reduce((part, cell) => part + cell, 0),
    0,
  );
  const foundCfm25 = kernel.before.siteCfm25.reduce((sum, cfm25) => sum + cfm25, 0);
  if (unfoundCfm25 > foundCfm25) {
    reasons.push(
      `About ${formatNumber(unfoundCfm25)} cfm of the leakage has not been found yet; what is not found cannot be priced. Walk the ducts again before you decide.`,
    );
  }
  reasons.push(...outOfReach);
  return reasons;
}
