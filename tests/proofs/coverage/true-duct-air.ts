import type { StudyHouse } from "./study-house.ts";
import type { TrueAir } from "./true-air.ts";

/** 60 × 0.075 × 0.24, Btu/h of one cfm and °F. */
export const PER_CFM = 1.08;

export interface Running {
  /** Sensible heat to the rooms while it runs, Btu/h; below 0 in cooling. */
  toRooms: number;
  toZones: number[];
  supplyF: number;
  enteringF: number;
  enteringW: number;
  /** Air out of the registers, cfm. */
  deliveredCfm: number;
}

/**
 * Follows the air once around: runs of a side one place after the other, plenum leaks before the runs and the others at
 * their ends, leaked air that comes back from a zone at the zone's temperature.
 */
export function runAir(
  house: StudyHouse,
  air: TrueAir,
  outdoor: { temperatureF: number; humidityRatio: number },
  room: { temperatureF: number; humidityRatio: number },
  zoneF: readonly number[],
  sensibleBtuPerH: number,
): Running {
  const roomF = room.temperatureF;
  const rooms = zoneF.length;
  const placeF = (place: number) => (place === rooms ? roomF : zoneF[place]!);
  const wetness = (place: number) => {
    const share = place === rooms ? 0 : house.zones[place]!.humidityFromOutdoors;
    return share * outdoor.humidityRatio + (1 - share) * room.humidityRatio;
  };
  const toZones = new Array<number>(rooms).fill(0);
  const total = PER_CFM * air.fanFlowCfm;
  let flow = 0;
  let heat = 0;
  let water = 0;
  const join = (cfm: number, f: number, w: number) => {
    flow += PER_CFM * cfm;
    heat += PER_CFM * cfm * f;
    water += PER_CFM * cfm * w;
  };
  let leaked = 0;
  for (let p = 0; p <= rooms; p++) leaked += air.returnPlenumLeaks[p]! + air.returnBranchLeaks[p]!;
  join(Math.max(1, air.fanFlowCfm - leaked), roomF, room.humidityRatio);
  for (let p = 0; p <= rooms; p++) join(air.returnBranchLeaks[p]!, placeF(p), wetness(p));
  let f = heat / flow;
  let toRooms = 0;
  const conduct = (areaFt2: number, place: number) => {
    const there = placeF(place);
    const next = there + (f - there) * Math.exp(-areaFt2 / house.ductRValue / flow);
    if (place === rooms) toRooms += flow * (f - next);
    else toZones[place]! += flow * (f - next);
    f = next;
  };
  conduct(house.roomsReturnAreaFt2, rooms);
  for (let p = 0; p < rooms; p++) conduct(house.zones[p]!.returnAreaFt2, p);
  heat = flow * f;
  for (let p = 0; p <= rooms; p++) join(air.returnPlenumLeaks[p]!, placeF(p), wetness(p));
  const enteringF = heat / flow;
  const enteringW = water / flow;
  const supplyF = enteringF + sensibleBtuPerH / total;
  f = supplyF;
  flow = total;
  const leave = (leaks: readonly number[]) => {
    for (let p = 0; p <= rooms; p++) {
      const passing = PER_CFM * leaks[p]!;
      if (p === rooms) toRooms += passing * (f - roomF);
      else {
        toZones[p]! += passing * (f - zoneF[p]!);
        // What does not reach outdoors pushes the zone's air into the rooms.
        toRooms += passing * (1 - house.zones[p]!.outdoorShare) * (zoneF[p]! - roomF);
      }
      flow -= passing;
    }
    flow = Math.max(1, flow);
  };
  leave(air.supplyPlenumLeaks);
  for (let p = 0; p < rooms; p++) conduct(house.zones[p]!.supplyAreaFt2, p);
  conduct(house.roomsSupplyAreaFt2, rooms);
  leave(air.supplyBranchLeaks);
  toRooms += flow * (f - roomF);
  // Air drawn out of a zone is made up from outdoors and from the rooms.
  for (let p = 0; p < rooms; p++) {
    const drawn = PER_CFM * (air.returnPlenumLeaks[p]! + air.returnBranchLeaks[p]!);
    const share = house.zones[p]!.outdoorShare;
    toZones[p]! += drawn * (share * (outdoor.temperatureF - zoneF[p]!) + (1 - share) * (roomF - zoneF[p]!));
  }
  return { toRooms, toZones, supplyF, enteringF, enteringW, deliveredCfm: flow / PER_CFM };
}
