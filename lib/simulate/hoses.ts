import type { GaugeChannel, TapPoint } from "#lib/setup/gauge-channels.ts";
import type { Pascals } from "#lib/units/quantity.ts";
import type { NetworkSolution } from "./flow-network.ts";
import { type Observer, shownPressure } from "./observer.ts";
import { FAN_INLET, HOUSE, OUTSIDE, RETURN, SUPPLY } from "./true-house.ts";

/** Which parts of one house the names of a set-up mean. */
export interface HoseEnds {
  fanJoins: string;
  fanStandsIn: string;
  zoneId: string;
  roomId: string;
  panBranchId: string;
  combustionZoneId: string;
}

/** The node of the network whose air a tap brings to the gauge. */
export function nodeOfTap(tap: TapPoint, ends: HoseEnds): string {
  const nodes: Record<TapPoint, string> = {
    "supply-plenum": SUPPLY,
    "return-plenum": RETURN,
    house: HOUSE,
    outside: OUTSIDE,
    zone: ends.zoneId,
    room: ends.roomId,
    pan: ends.panBranchId,
    "combustion-zone": ends.combustionZoneId,
    "fan-flow-tap": FAN_INLET,
    "fan-duct-side": ends.fanJoins,
    "fan-surroundings": ends.fanStandsIn,
  };
  return nodes[tap];
}

/** What the gauge shows on one channel: signal hose less reference hose, as the gauge sees it. Source: derived. */
export function channelReading({
  channel,
  ends,
  solution,
  observer,
}: {
  channel: Pick<GaugeChannel, "signal" | "reference">;
  ends: HoseEnds;
  solution: NetworkSolution;
  observer: Observer;
}): Pascals {
  const at = (tap: TapPoint) => solution.pressuresPa[nodeOfTap(tap, ends)]!;
  return shownPressure(observer, at(channel.signal) - at(channel.reference));
}
