import type { BtuPerHour, Ratio, Share } from "#lib/units/quantity.ts";
import type { AirPath } from "./air-path.ts";

/** Where each part of the money for heating or cooling goes. The shares add up to 1; one below 0 is a gain. */
export interface CapacityAccount {
  /** Reaches the rooms through the registers. */
  roomsShare: Share;
  /** Lost to a place, and back in the rooms from there. */
  regainedShare: Share;
  supplyLeakShare: Share;
  /** Warmth (or cold) that return leaks cost. */
  returnLeakShare: Share;
  /** Moisture that return leaks bring in. */
  returnMoistureShare: Share;
  /** Through the walls of supply and return ducts. */
  ductWallsShare: Share;
  /** Outdoor air that enters because the blower runs. */
  infiltrationShare: Share;
  /** Warming up the ducts at each start. */
  cyclingShare: Share;
  /** Equipment that works worse since its airflow is wrong. */
  equipmentShare: Share;
}

export function createCapacityAccount(): CapacityAccount {
  return {
    roomsShare: 0,
    regainedShare: 0,
    supplyLeakShare: 0,
    returnLeakShare: 0,
    returnMoistureShare: 0,
    ductWallsShare: 0,
    infiltrationShare: 0,
    cyclingShare: 0,
    equipmentShare: 0,
  };
}

/**
 * Adds one moment to an account, weighted by the energy it uses; weights that add up to 1 give the account of a season.
 * Rooms and regained together are the distribution efficiency, equipment factor included. Source: derived (every Btu of
 * the capacity is counted once). Unguarded, allocates nothing.
 */
export function addToAccount({
  path,
  capacityBtuPerH,
  cyclingFactor,
  equipmentFactor = 1,
  weight = 1,
  account,
}: {
  path: AirPath;
  capacityBtuPerH: BtuPerHour;
  cyclingFactor: Ratio;
  equipmentFactor?: Ratio;
  weight?: number;
  account: CapacityAccount;
}): void {
  const perBtu = (weight * equipmentFactor) / capacityBtuPerH;
  const conductionRegained = path.supplyConductionRegainedBtuPerH + path.returnConductionRegainedBtuPerH;
  const regained = conductionRegained + path.supplyLeakRegainedBtuPerH + path.returnLeakRegainedBtuPerH;
  const beforeCycling = path.deliveredBtuPerH + regained - path.infiltrationBtuPerH;
  account.roomsShare += perBtu * cyclingFactor * (path.deliveredBtuPerH - path.infiltrationBtuPerH);
  account.regainedShare += perBtu * cyclingFactor * regained;
  account.supplyLeakShare += perBtu * (path.supplyLeakBtuPerH - path.supplyLeakRegainedBtuPerH);
  account.returnLeakShare +=
    perBtu * (path.returnLeakBtuPerH - path.returnLeakLatentBtuPerH - path.returnLeakRegainedBtuPerH);
  account.returnMoistureShare += perBtu * path.returnLeakLatentBtuPerH;
  account.ductWallsShare += perBtu * (path.supplyConductionBtuPerH + path.returnConductionBtuPerH - conductionRegained);
  account.infiltrationShare += perBtu * path.infiltrationBtuPerH;
  account.cyclingShare += perBtu * (1 - cyclingFactor) * beforeCycling;
  account.equipmentShare += weight * (1 - equipmentFactor);
}
