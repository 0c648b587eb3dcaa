import { moistAirEnthalpy } from "#lib/air/moist-air.ts";
import { type AirPath, createAirPath } from "#lib/distribution/air-path.ts";
import { addToAccount, createCapacityAccount } from "#lib/distribution/capacity-account.ts";
import { LEAST_USEFUL_SHARE } from "#lib/distribution/fixed-equipment-season.ts";
import { followCooling } from "#lib/distribution/follow-cooling.ts";
import { followHeating } from "#lib/distribution/follow-heating.ts";
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

/** Follows the air through one system in one bin, at the best estimates. */
function followBin(
  { house, kernel, state, mode }: Input,
  bins: SeasonBins,
  bin: number,
  capacityBtuPerH: number,
): AirPath {
  const zones = kernel.zones[mode];
  const { indoor } = house.loads;
  const outdoorF = bins.temperatureF[bin]!;
  const zoneTemperatureF = zones.constant.map(
    (constant, p) =>
      constant +
      zones.outdoor[p]! * outdoorF +
      zones.sun[p]! * bins.sunBtuPerHFt2[bin]! +
      zones.ground[p]! * bins.groundF[bin]! +
      zones.night[p]! * bins.isNight[bin]!,
  );
  const counted = (share: number) => share * bins.humidityRatio[bin]! + (1 - share) * indoor.coolingHumidityRatio;
  const zoneEnthalpyBtuPerLb = zoneTemperatureF.map((temperatureF, p) =>
    moistAirEnthalpy(temperatureF, counted(zones.outdoorMoistureShare[p]!)),
  );
  const around = {
    indoorTemperatureF: mode === "heating" ? indoor.heatingF : indoor.coolingF,
    outdoorTemperatureF: outdoorF,
    zoneTemperatureF,
    indoorEnthalpyBtuPerLb: indoor.coolingEnthalpyBtuPerLb,
    outdoorEnthalpyBtuPerLb: moistAirEnthalpy(
      outdoorF,
      counted(house.space.parameters[indoor.coilMoistureShareAt]!.base),
    ),
    zoneEnthalpyBtuPerLb,
  };
  const path = createAirPath();
  if (mode === "heating") followHeating(state.prepared, around, capacityBtuPerH, path);
  else {
    const system =
      house.systems[kernel.before.systems.indexOf(state)] ?? house.systems[kernel.after.systems.indexOf(state)]!;
    followCooling(
      state.prepared,
      around,
      { capacityBtuPerH, sensibleHeatRatio: system.cooling!.sensibleHeatRatio },
      path,
    );
  }
  return path;
}

/** The air's trip on the design day. */
export function designAirPath(input: Input): AirPath {
  const mode = input.state.modes[input.mode]!;
  return followBin(input, mode.designBins, 0, designCapacity(mode));
}

/** Where each unit of the equipment's output goes over a season, weighted by what it uses. */
export function destinationOf(input: Input): Destination {
  const mode = input.state.modes[input.mode]!;
  const { bins } = mode;
  const account = createCapacityAccount();
  const weights = Array.from(
    bins.loadShare,
    (share, bin) => share / Math.max(LEAST_USEFUL_SHARE, mode.usefulBtuPerH[bin]! / capacityInBin(mode, bin)),
  );
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  weights.forEach((weight, bin) => {
    const capacityBtuPerH = capacityInBin(mode, bin);
    addToAccount({
      path: followBin(input, bins, bin, capacityBtuPerH),
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
