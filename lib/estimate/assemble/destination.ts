import { moistAirEnthalpy } from "#lib/air/moist-air.ts";
import { type AirPath, createAirPath } from "#lib/distribution/air-path.ts";
import { addToAccount, createCapacityAccount } from "#lib/distribution/capacity-account.ts";
import { LEAST_USEFUL_SHARE } from "#lib/distribution/fixed-equipment-season.ts";
import { followCooling } from "#lib/distribution/follow-cooling.ts";
import { followHeating } from "#lib/distribution/follow-heating.ts";
import { usefulInBin } from "#lib/distribution/useful-line.ts";
import type { Destination } from "#lib/job/result/leakage-result.ts";
import type { HouseModel } from "../complete/complete-house.ts";
import type { HouseKernel } from "../kernel/house-kernel.ts";
import type { SystemState } from "../kernel/house-state.ts";
import { capacityInBin, designCapacity } from "../kernel/mode-state.ts";
import type { Mode, SeasonBins } from "../season-bins.ts";

interface Input {
  house: HouseModel;
  kernel: HouseKernel;
  state: SystemState;
  mode: Mode;
}

/** Follows the air through one system at the best estimates, bin by bin. Each answer overwrites the one before. */
function createFollower({ house, kernel, state, mode }: Input) {
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
    if (mode === "heating") followHeating(state.prepared, around, capacityBtuPerH, path);
    else followCooling(state.prepared, around, coil, path);
    return path;
  };
}

/** The air's trip on the design day. */
export function designAirPath(input: Input): AirPath {
  const mode = input.state.modes[input.mode]!;
  return createFollower(input)(mode.designBins, 0, designCapacity(mode));
}

/** Where each unit of the equipment's output goes over a season, weighted by what it uses. */
export function destinationOf(input: Input): Destination {
  const mode = input.state.modes[input.mode]!;
  const { bins } = mode;
  const account = createCapacityAccount();
  const follow = createFollower(input);
  const weights = Array.from(bins.loadShare, (share, bin) => {
    const capacityBtuPerH = capacityInBin(mode, bin);
    const usefulShare = usefulInBin(mode.useful, bins, bin, capacityBtuPerH) / capacityBtuPerH;
    return share / Math.max(LEAST_USEFUL_SHARE, usefulShare);
  });
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  weights.forEach((weight, bin) => {
    const capacityBtuPerH = capacityInBin(mode, bin);
    addToAccount({
      path: follow(bins, bin, capacityBtuPerH),
      capacityBtuPerH,
      cyclingFactor: input.state.prepared.cyclingFactor,
      weight: weight / total,
      account,
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
