import type { FlowLink, FlowNetwork, LeakLink } from "./flow-network.ts";
import {
  type AirPath,
  type DuctFan,
  FAN_INLET,
  type FanControl,
  HOUSE,
  OUTSIDE,
  RETURN,
  type Situation,
  SUPPLY,
  type TrueBranch,
  type TrueHouse,
  type TrueLeak,
} from "./true-house.ts";

/** A door propped open: 20 ft² at a discharge coefficient near 0.6 pass some 3,000 cfm at 1 Pa. Source: practice. */
const OPEN_DOOR: AirPath = { flowCfm25: 15000, exponent: 0.5 };
/** Film over a register holds all but this; it also keeps a tight duct from hanging free in the network. */
const FILM_LEAK: AirPath = { flowCfm25: 0.001, exponent: 0.65 };
/** A fan that stands still lets air through; this speed stands for it. */
const SLOWEST_SPEED_SHARE = 0.01;
const WINDWARD = "windward-face";
const LEEWARD = "leeward-face";

/**
 * The flow network of a house in one situation.
 * Node names: "outside" (0 Pa), "house", "supply" and "return" (plenums), the ids of branches, zones and shut rooms,
 * "fan-inlet" (behind the flow restrictor of the test fan). Source: derived.
 */
export function houseNetwork(house: TrueHouse, situation: Situation): FlowNetwork {
  const roomNode = (roomId: string) => (situation.areRoomDoorsShut ? roomId : HOUSE);
  return {
    fixedPressuresPa: {
      [OUTSIDE]: 0,
      [WINDWARD]: situation.windPressurePa,
      [LEEWARD]: -situation.windPressurePa / 2,
    },
    links: [
      ...envelopeLinks(house, situation),
      ...house.zones.flatMap((zone) => [
        path(`${zone.id}-to-house`, HOUSE, zone.id, zone.toHouse),
        path(`${zone.id}-to-outside`, zone.id, OUTSIDE, zone.toOutside),
      ]),
      ...house.branches.flatMap((branch) => branchLinks(branch, roomNode(branch.roomId), situation)),
      ...house.leaks
        .filter((leak) => !isCutOff(leak, situation))
        .map((leak) => path(leak.id, leak.branchId ?? leak.side, leak.zoneId, leak)),
      ...equipmentLinks(house, situation),
      ...fanLinks(situation),
    ],
  };
}

export const coefficientOf = ({ flowCfm25, exponent }: AirPath): number => flowCfm25 / 25 ** exponent;

/** The blank stands at the cabinet, so the leaks of the return plenum lie on its other side. */
const isCutOff = ({ side, branchId }: TrueLeak, { hasBarrierBeforeEquipment }: Situation): boolean =>
  hasBarrierBeforeEquipment && side === "return" && branchId === undefined;

function path(id: string, from: string, to: string, way: AirPath, share = 1): LeakLink {
  return { kind: "leak", id, from, to, coefficient: share * coefficientOf(way), exponent: way.exponent };
}

function envelopeLinks(house: TrueHouse, situation: Situation): FlowLink[] {
  const roomShare = situation.areRoomDoorsShut ? house.rooms.reduce((sum, room) => sum + room.envelopeShare, 0) : 0;
  const faces = (id: string, node: string, share: number): FlowLink[] =>
    situation.windPressurePa === 0
      ? [path(id, node, OUTSIDE, house.envelope, share)]
      : [
          path(`${id}-windward`, node, WINDWARD, house.envelope, share / 2),
          path(`${id}-leeward`, node, LEEWARD, house.envelope, share / 2),
        ];
  const links = faces("envelope", HOUSE, 1 - roomShare);
  if (situation.areRoomDoorsShut) {
    for (const room of house.rooms) {
      links.push(path(`${room.id}-door`, room.id, HOUSE, room.doorGap));
      links.push(...faces(`${room.id}-envelope`, room.id, room.envelopeShare));
    }
  }
  if (situation.isOutsideDoorOpen) links.push(path("outside-door", HOUSE, OUTSIDE, OPEN_DOOR));
  if (situation.exhaustFlowCfm !== 0) links.push(steady("exhaust", HOUSE, OUTSIDE, situation.exhaustFlowCfm));
  return links;
}

/** Run and register, in the direction in which the air moves in operation. */
function branchLinks(branch: TrueBranch, room: string, situation: Situation): FlowLink[] {
  const isOpen =
    (!situation.areRegistersSealed || situation.openBranchIds.includes(branch.id)) &&
    situation.panBranchId !== branch.id &&
    situation.ductFan?.joins !== branch.id;
  const isBlanked = branch.side === "return" && situation.hasBarrierBeforeEquipment;
  return [
    path(`${branch.id}-register`, branch.id, room, isOpen ? branch.register : FILM_LEAK),
    path(`${branch.id}-duct`, branch.side, branch.id, isBlanked ? FILM_LEAK : branch.duct),
  ];
}

function equipmentLinks({ airHandler }: TrueHouse, situation: Situation): FlowLink[] {
  if (situation.isAirHandlerOn) {
    const { flowAtZeroCfm, slopeCfmPerPa } = airHandler;
    return [{ kind: "curve-fan", id: "air-handler", from: RETURN, to: SUPPLY, flowAtZeroCfm, slopeCfmPerPa }];
  }
  if (situation.hasBarrierAtEquipment) return [path("passage", RETURN, SUPPLY, FILM_LEAK)];
  if (!situation.isFilterIn) return [path("passage", RETURN, SUPPLY, airHandler.passage)];
  return [path("filter", RETURN, "cabinet", airHandler.filter), path("passage", "cabinet", SUPPLY, airHandler.passage)];
}

function fanLinks({ ductFan, houseFan }: Situation): FlowLink[] {
  const links = houseFan ? [fanLink({ id: "house-fan", from: OUTSIDE, to: HOUSE }, houseFan)] : [];
  return ductFan ? [...links, ...ductFanLinks(ductFan)] : links;
}

/** Air enters the fan through its restrictor, whatever the direction; behind it the fan adds pressure. */
function ductFanLinks({ direction, joins, standsIn, restrictor, control }: DuctFan): FlowLink[] {
  const [from, to] = direction === "pushing" ? [standsIn, joins] : [joins, standsIn];
  // The link runs the way the air does, so the fan always pushes along it.
  const along: FanControl =
    control.by === "speed"
      ? { ...control, direction: "pushing" }
      : control.by === "flow"
        ? { ...control, flowCfm: Math.abs(control.flowCfm) }
        : control;
  return [
    { kind: "leak", id: "duct-fan-inlet", from, to: FAN_INLET, ...restrictor },
    fanLink({ id: "duct-fan", from: FAN_INLET, to }, along),
  ];
}

/** At a speed, by the laws of similar fans: flow goes with the speed, pressure with its square. */
function fanLink(ends: { id: string; from: string; to: string }, control: FanControl): FlowLink {
  if (control.by === "channel") {
    const { signal, reference, targetPa } = control;
    return { kind: "holding-fan", ...ends, signal, reference, targetPa };
  }
  if (control.by === "flow") return steady(ends.id, ends.from, ends.to, control.flowCfm);
  const speedShare = Math.max(control.speedShare, SLOWEST_SPEED_SHARE);
  const sign = control.direction === "pushing" ? 1 : -1;
  return {
    kind: "curve-fan",
    ...ends,
    flowAtZeroCfm: sign * speedShare * control.freeFlowCfm,
    slopeCfmPerPa: control.freeFlowCfm / (speedShare * control.shutOffPa),
  };
}

function steady(id: string, from: string, to: string, flowCfm: number): FlowLink {
  return { kind: "curve-fan", id, from, to, flowAtZeroCfm: flowCfm, slopeCfmPerPa: 0 };
}
