import type { GaugeChannel } from "#lib/setup/gauge-channels.ts";
import type { FanConnection, SetupAnswers } from "#lib/setup/setup-answers.ts";
import type { SetupSheet } from "#lib/setup/setup-sheet.ts";
import { TEST_TRAITS } from "#lib/setup/test-traits.ts";
import type { Cfm, Pascals } from "#lib/units/quantity.ts";
import { channelReading, type HoseEnds, nodeOfTap } from "./hoses.ts";
import { houseNetwork } from "./house-network.ts";
import { type Observer, pressureBehind } from "./observer.ts";
import { centralReturn, trueRestrictor } from "./readings/duct-fan-reading.ts";
import { solveNetwork } from "./solve-network.ts";
import { AS_FOUND, type FanControl, HOUSE, RETURN, type Situation, SUPPLY, type TrueHouse } from "./true-house.ts";

/** Air that exhaust fans and a dryer move in the worst case of a combustion test. Source: practice. */
const WORST_EXHAUST_CFM: Cfm = 350;

/** The fan of a sheet that was made without one: pressures do not depend on it, only the fan's own. */
const UNRESTRICTED = { coefficient: 100, exponent: 0.5 } as const;

export interface ChannelReading {
  channelId: GaugeChannel["id"];
  shownPa: Pascals;
}

/**
 * What each gauge channel shows when a set-up sheet is followed hose by hose in a house of known leaks.
 * The house is put as the sheet says, the fans hold the channels that the sheet names, and each hose ends where its
 * drawing ends. Source: derived. It is how the sheets themselves are proved.
 */
export function readSheet({
  house,
  answers,
  sheet,
  observer,
}: {
  house: TrueHouse;
  answers: SetupAnswers;
  sheet: SetupSheet;
  observer: Observer;
}): ChannelReading[] {
  const { channels } = sheet.drawing;
  const ends = hoseEnds(house, answers.fanConnection);
  const held = (by: NonNullable<GaugeChannel["heldBy"]>): FanControl | undefined => {
    const channel = channels.find(({ heldBy }) => heldBy === by);
    if (!channel) return undefined;
    return {
      by: "channel",
      signal: nodeOfTap(channel.signal, ends),
      reference: nodeOfTap(channel.reference, ends),
      targetPa: pressureBehind(observer, channel.expectedPressurePa ?? normalPressure(house, answers)),
    };
  };
  const ductControl = held("duct-fan");
  const calibration = sheet.restrictorPlan?.chosen?.calibration ?? UNRESTRICTED;
  const situation: Situation = {
    ...sheetSituation(answers),
    houseFan: held("house-fan"),
    ductFan: ductControl && {
      direction: answers.direction,
      joins: ends.fanJoins,
      standsIn: ends.fanStandsIn,
      restrictor: trueRestrictor(calibration, observer),
      control: ductControl,
    },
    ...(answers.testKind === "pressure-pan" ? { panBranchId: ends.panBranchId } : {}),
  };
  const solution = solveNetwork(houseNetwork(house, situation));
  return channels.map((channel) => ({
    channelId: channel.id,
    shownPa: channelReading({ channel, ends, solution, observer }),
  }));
}

/** The house as a sheet wants it, fans aside. */
export function sheetSituation({ testKind }: Pick<SetupAnswers, "testKind">): Situation {
  const { sealsRegisters, airHandler, outsideDoor, filter } = TEST_TRAITS[testKind];
  return {
    ...AS_FOUND,
    areRegistersSealed: sealsRegisters,
    isAirHandlerOn: airHandler === "running",
    isOutsideDoorOpen: outsideDoor === "open",
    isFilterIn: filter === "as-used",
    areRoomDoorsShut: testKind === "room-to-hall",
    hasBarrierAtEquipment: testKind.startsWith("side-leakage"),
    hasBarrierBeforeEquipment: testKind === "matched-pressure",
    exhaustFlowCfm: testKind === "combustion-safety" ? WORST_EXHAUST_CFM : 0,
  };
}

/** What the taps of a set-up mean in one house. */
export function hoseEnds(house: TrueHouse, fanConnection: FanConnection): HoseEnds {
  const supplies = house.branches.filter(({ side }) => side === "supply");
  const fanJoins = {
    "central-return": centralReturn(house),
    "air-handler-cabinet": RETURN,
    "supply-plenum": SUPPLY,
    "branch-register": supplies.at(-1)!.id,
  }[fanConnection];
  const zoneId = house.zones[0]?.id ?? HOUSE;
  return {
    fanJoins,
    fanStandsIn: HOUSE,
    zoneId,
    roomId: house.rooms[0]?.id ?? HOUSE,
    panBranchId: supplies[0]!.id,
    combustionZoneId: HOUSE,
  };
}

/** The supply plenum in normal operation, which a matched-pressure test comes back to. */
function normalPressure(house: TrueHouse, answers: SetupAnswers): Pascals {
  const situation = { ...sheetSituation(answers), hasBarrierBeforeEquipment: false };
  const { pressuresPa } = solveNetwork(houseNetwork(house, situation));
  return pressuresPa[SUPPLY]! - pressuresPa[HOUSE]!;
}
