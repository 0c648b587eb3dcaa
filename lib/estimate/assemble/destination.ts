import { moistAirEnthalpy } from "#lib/air/moist-air.ts";
import { type AirPath, createAirPath } from "#lib/distribution/air-path.ts";
import { addToAccount, createCapacityAccount } from "#lib/distribution/capacity-account.ts";
import type { PreparedDucts } from "#lib/distribution/duct-system.ts";
import { LEAST_USEFUL_SHARE } from "#lib/distribution/fixed-equipment-season.ts";
import { followCooling } from "#lib/distribution/follow-cooling.ts";
import { followHeating } from "#lib/distribution/follow-heating.ts";
import { type UsefulLine, usefulInBin } from "#lib/distribution/useful-line.ts";
import type { Destination } from "#lib/job/result/leakage-result.ts";
import type { HouseModel } from "../complete/complete-house.ts";
import type { HouseKernel } from "../kernel/house-kernel.ts";
import type { SystemState } from "../kernel/house-state.ts";
import {
  capacityInBin,
  designCapacity,
  lowCapacityInBin,
  lowShareInBin,
  type ModeState,
} from "../kernel/mode-state.ts";
import type { Mode, SeasonBins } from "../season-bins.ts";

interface Input {
  house: HouseModel;
  kernel: HouseKernel;
  state: SystemState;
  mode: Mode;
}

/** Follows the air through one system at the best estimates, bin by bin. Each answer overwrites the one before. */
function createFollower({ house, kernel, state, mode }: Input, prepared: PreparedDucts) {
  const zones = kernel.zones[mode];
  const { indoor } = house.loads;
  const coilMoistureShare = house.space.parameters[indoor.coilMoistureShareAt]!.base;
  const { cooling } =
    house.systems[kernel.before.systems.indexOf(state)] ?? house.systems[kernel.after.systems.indexOf(state)]!;
  const coil = { capacityBtuPerH: 0, sensibleHeatRatio: cooling?.sensibleHeatRatio ?? 1 };
  const places = zones.constant.length;
  const around = {
    indoorTemperatureF: mode === "heating" ? indoor.heatingF : indoor.coolingF,
    outdoorTemperatureF: 0,
    zoneTemperatureF: new Float64Array(places),
    indoorEnthalpyBtuPerLb: indoor.coolingEnthalpyBtuPerLb,
    outdoorEnthalpyBtuPerLb: 0,
    zoneEnthalpyBtuPerLb: new Float64Array(places),
  };
  const path = createAirPath();

  return (bins: SeasonBins, bin: number, capacityBtuPerH: number): AirPath => {
    const outdoorF = bins.temperatureF[bin]!;
    const humidity = bins.humidityRatio[bin]!;
    const counted = (share: number) => share * humidity + (1 - share) * indoor.coolingHumidityRatio;
    around.outdoorTemperatureF = outdoorF;
    around.outdoorEnthalpyBtuPerLb = moistAirEnthalpy(outdoorF, counted(coilMoistureShare));
    for (let p = 0; p < places; p++) {
      const zoneF =
        zones.constant[p]! +
        zones.outdoor[p]! * outdoorF +
        zones.sun[p]! * bins.sunBtuPerHFt2[bin]! +
        zones.ground[p]! * bins.groundF[bin]! +
        zones.night[p]! * bins.isNight[bin]!;
      around.zoneTemperatureF[p] = zoneF;
      around.zoneEnthalpyBtuPerLb[p] = moistAirEnthalpy(zoneF, counted(zones.outdoorMoistureShare[p]!));
    }
    coil.capacityBtuPerH = capacityBtuPerH;
    if (mode === "heating") followHeating(prepared, around, capacityBtuPerH, path);
    else followCooling(prepared, around, coil, path);
    return path;
  };
}

/** The air's trip on the design day. */
export function designAirPath(input: Input): AirPath {
  const mode = input.state.modes[input.mode]!;
  return createFollower(input, input.state.prepared)(mode.designBins, 0, designCapacity(mode));
}

interface Stage {
  useful: UsefulLine;
  prepared: PreparedDucts;
  capacityInBin(bin: number): number;
  /** Part of a bin's need that this stage meets. */
  shareInBin(bin: number): number;
}

function stagesOf({ house, state }: Input, mode: ModeState): Stage[] {
  const { low } = mode;
  const lowShare = (bin: number) => lowShareInBin(mode, bin, house.space.parameters);
  const high: Stage = {
    useful: mode.useful,
    prepared: state.prepared,
    capacityInBin: (bin) => capacityInBin(mode, bin),
    shareInBin: (bin) => 1 - lowShare(bin),
  };
  if (!low) return [high];
  const { useful, prepared } = low;
  return [high, { useful, prepared, capacityInBin: (bin) => lowCapacityInBin(mode, bin), shareInBin: lowShare }];
}

/** Where each unit of the equipment's output goes over a season, weighted by what it uses. */
export function destinationOf(input: Input): Destination {
  const mode = input.state.modes[input.mode]!;
  const { bins } = mode;
  const account = createCapacityAccount();
  const stages = stagesOf(input, mode).map((stage) => ({ ...stage, follow: createFollower(input, stage.prepared) }));
  const weights = stages.map(({ useful, capacityInBin: capacityIn, shareInBin }) =>
    Array.from(bins.loadShare, (share, bin) => {
      const capacityBtuPerH = capacityIn(bin);
      const usefulShare = usefulInBin(useful, bins, bin, capacityBtuPerH) / capacityBtuPerH;
      return (share * shareInBin(bin)) / Math.max(LEAST_USEFUL_SHARE, usefulShare);
    }),
  );
  const total = weights.reduce((all, ofStage) => ofStage.reduce((sum, weight) => sum + weight, all), 0);
  stages.forEach(({ follow, prepared, capacityInBin: capacityIn }, stage) => {
    weights[stage]!.forEach((weight, bin) => {
      if (weight === 0) return;
      const capacityBtuPerH = capacityIn(bin);
      addToAccount({
        path: follow(bins, bin, capacityBtuPerH),
        capacityBtuPerH,
        cyclingFactor: prepared.cyclingFactor,
        weight: weight / total,
        account,
      });
    });
  });
  const { supplyLeakShare, returnLeakShare, returnMoistureShare, ductWallsShare, infiltrationShare, cyclingShare } =
    account;
  return {
    roomsShare: account.roomsShare,
    regainedShare: account.regainedShare,
    outsideShare: total > 0 ? 1 - account.roomsShare - account.regainedShare : 0,
    lossesBy: {
      supplyLeakShare,
      returnLeakShare,
      returnMoistureShare,
      ductWallsShare,
      infiltrationShare,
      cyclingShare,
    },
  };
}
