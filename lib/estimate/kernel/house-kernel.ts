import { DUCT_LEAK_EXPONENT } from "#lib/air/flow-at-pressure.ts";
import { AIRFLOW_OUT, solveAirflow } from "#lib/distribution/solve-airflow.ts";
import type { HouseModel } from "../complete/complete-house.ts";
import { createOutputLayout, type OutputLayout } from "../output-layout.ts";
import { fillDistribution, type Zones } from "./fill-distribution.ts";
import { fillEnergy, findLoads } from "./fill-energy.ts";
import { createUnfoundShares, fillOperatingLeaks, type PlenumPressures } from "./fill-leaks.ts";
import { createSiteApportioner } from "./fill-sites.ts";
import { createHouseState, type HouseState } from "./house-state.ts";
import { scaleLeaks } from "./leak-state.ts";
import { createOutputWriter } from "./write-outputs.ts";
import { createZoneLines, fillZoneLines } from "./zone-lines.ts";

/** What is done to the leaks: for each site the parameter that says which share is left, −1 where nothing is done. */
export interface WorkPlan {
  id: string;
  remainingAt: Int32Array;
  /** The same for sealing from inside, which comes on top of the work by hand. */
  sprayAt: Int32Array;
  /** The same for leakage not yet found, by system: only sealing from inside reaches it. */
  unfoundRemainingAt: Int32Array;
}

export interface HouseKernel {
  readonly layout: OutputLayout;
  readonly before: HouseState;
  readonly after: HouseState;
  readonly zones: Zones;
  /** Yearly need of the house by load group, of the last evaluation. */
  readonly loadBtu: Float64Array;
  /** One evaluation: parameters in, every headline number out. The first plan's state after stays in `after`. */
  evaluate(parameters: Float64Array, out: Float64Array): void;
}

/** More than this share of the fan flow cannot leak on one side without the rooms' air being gone. */
const MOST_LEAK_SHARE = 0.7;

/**
 * The whole house as one function of its uncertain parameters, used for the answer itself and for every draw alike.
 * Order: temperatures of the places → leaks apportioned → leaks while running → distribution and energy before; then
 * for each plan: leaks left → airflow → distribution and energy after → outputs. Allocates nothing per evaluation but a
 * few small records.
 */
export function createHouseKernel(
  house: HouseModel,
  plans: readonly WorkPlan[],
  { isVerified, byMonth = true }: { isVerified: boolean; byMonth?: boolean },
): HouseKernel {
  const before = createHouseState(house);
  const after = createHouseState(house);
  const scratch = plans.length > 1 ? createHouseState(house) : after;
  const zones = { heating: createZoneLines(house.places), cooling: createZoneLines(house.places) };
  const pressures: PlenumPressures = {
    supplyPa: new Float64Array(house.systems.length),
    returnPa: new Float64Array(house.systems.length),
  };
  const unfound = createUnfoundShares(house);
  const apportioner = createSiteApportioner(house);
  const flow = new Float64Array(AIRFLOW_OUT.length);
  const loadBtu = new Float64Array(house.loads.groups.length);
  const layout = createOutputLayout();
  const writer = createOutputWriter({ house, plans, layout, byMonth });

  /** Airflow with this state's leaks, which then pass what the new pressures let through. */
  function fillAirflow(parameters: Float64Array, state: HouseState): void {
    for (let s = 0; s < house.systems.length; s++) {
      const system = house.systems[s]!;
      const fanFlowCfm = parameters[system.fanFlowAt]!;
      const mostLeakageCfm = MOST_LEAK_SHARE * fanFlowCfm;
      const { leaks: was } = before.systems[s]!;
      const systemState = state.systems[s]!;
      const { leaks } = systemState;
      solveAirflow(
        flow,
        fanFlowCfm,
        pressures.supplyPa[s]!,
        pressures.returnPa[s]!,
        Math.min(mostLeakageCfm, was.supplyAllCfm),
        Math.min(mostLeakageCfm, leaks.supplyAllCfm),
        Math.min(mostLeakageCfm, was.returnAllCfm),
        Math.min(mostLeakageCfm, leaks.returnAllCfm),
        system.fanSlopeCfmPerPa,
        DUCT_LEAK_EXPONENT.value,
      );
      systemState.fanFlowCfm = flow[AIRFLOW_OUT.fanFlowCfm]!;
      systemState.externalStaticPa = flow[AIRFLOW_OUT.supplyStaticPa]! + flow[AIRFLOW_OUT.returnStaticPa]!;
      systemState.deliveredCfm = systemState.fanFlowCfm - flow[AIRFLOW_OUT.supplyLeakageCfm]!;
      // A blower's power follows its flow at the same speed. Source: practice.
      systemState.blowerPowerW = (parameters[system.blowerPowerAt]! * systemState.fanFlowCfm) / fanFlowCfm;
      // Before the work this changes only leaks that would pass more than the most.
      scaleLeaks(leaks, flow[AIRFLOW_OUT.supplyLeakageCfm]!, flow[AIRFLOW_OUT.returnLeakageCfm]!);
    }
  }

  function fillState(parameters: Float64Array, state: HouseState): void {
    fillOperatingLeaks({ house, state, unfound, pressures, parameters });
    fillAirflow(parameters, state);
    fillDistribution({ house, state, zones, parameters });
  }

  return {
    layout,
    before,
    after,
    zones,
    loadBtu,
    evaluate(parameters, out) {
      const { indoor } = house.loads;
      const around = { places: house.places, parameters, coilMoistureShare: parameters[indoor.coilMoistureShareAt]! };
      fillZoneLines({ ...around, indoorF: indoor.heatingF, out: zones.heating });
      fillZoneLines({ ...around, indoorF: indoor.coolingF, out: zones.cooling });
      for (let s = 0; s < house.systems.length; s++) {
        pressures.supplyPa[s] = parameters[house.systems[s]!.supplyStaticAt]!;
        pressures.returnPa[s] = parameters[house.systems[s]!.returnStaticAt]!;
      }
      apportioner.fillBefore(parameters, before);
      fillState(parameters, before);
      findLoads({ house, state: before, parameters, loadBtu });
      fillEnergy({ house, state: before, parameters, loadBtu });
      writer.writeBefore(before, parameters, out);
      for (let k = 0; k < plans.length; k++) {
        const state = k === 0 ? after : scratch;
        apportioner.fillAfter({ parameters, before, plan: plans[k]!, isVerified: k === 0 && isVerified, out: state });
        fillState(parameters, state);
        fillEnergy({ house, state, parameters, loadBtu });
        writer.writeAfter(k, before, state, parameters, out);
      }
    },
  };
}
