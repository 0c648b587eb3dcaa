import type { Side } from "#lib/job/duct-system.ts";
import type { FanDirection } from "#lib/job/instrument-schema.ts";
import type { PlaceKind } from "#lib/job/place.ts";
import type { BtuPerHour, Cfm, Pascals, Ratio, Share, SquareFeet } from "#lib/units/quantity.ts";

/** A way for air, by what passes it at 25 Pa: a leak, a stretch of duct, a register, the gap under a door. */
export interface AirPath {
  flowCfm25: Cfm;
  exponent: Ratio;
}

/** A place beside the rooms, open to some degree both to the house and to the air outside. */
export interface TrueZone {
  id: string;
  kind: PlaceKind;
  label: string;
  toHouse: AirPath;
  toOutside: AirPath;
}

/** One run from a plenum to its register or grille. */
export interface TrueBranch {
  id: string;
  side: Side;
  label: string;
  /** The room at its end; "house" is the hall and everything that is never shut off. */
  roomId: string;
  duct: AirPath;
  register: AirPath;
}

export interface TrueRoom {
  id: string;
  label: string;
  /** What stays open when its door is shut. */
  doorGap: AirPath;
  /** Its part of the leaks of the envelope. */
  envelopeShare: Share;
}

export interface TrueLeak {
  id: string;
  side: Side;
  label: string;
  /** A branch, or nothing: the plenum and its trunk. */
  branchId?: string;
  /** A zone, or "house": the leak stays indoors. */
  zoneId: string;
  flowCfm25: Cfm;
  exponent: Ratio;
}

/** The equipment: a straight fan curve while it runs, a passage while it stands still. */
export interface TrueAirHandler {
  flowAtZeroCfm: Cfm;
  slopeCfmPerPa: number;
  passage: AirPath;
  filter: AirPath;
  heatingOutputBtuPerH: BtuPerHour;
}

/** A house whose every leak is known, as no one ever knows a real one. */
export interface TrueHouse {
  id: string;
  floorAreaFt2: SquareFeet;
  /** Leaks of the rooms straight to outside; those through zones and ducts come on top. */
  envelope: AirPath;
  zones: readonly TrueZone[];
  rooms: readonly TrueRoom[];
  branches: readonly TrueBranch[];
  airHandler: TrueAirHandler;
  leaks: readonly TrueLeak[];
}

/** What state the house is in while a test runs. */
export interface Situation {
  /** A door or window to outside. */
  isOutsideDoorOpen: boolean;
  areRoomDoorsShut: boolean;
  isAirHandlerOn: boolean;
  isFilterIn: boolean;
  areRegistersSealed: boolean;
  /** Registers forgotten while the others were sealed. */
  openBranchIds: readonly string[];
  /** A blank between the return side and the supply side, at the equipment. */
  hasBarrierAtEquipment: boolean;
  /** A blank between the return ducts and the equipment. */
  hasBarrierBeforeEquipment: boolean;
  /** A pressure pan over this register. */
  panBranchId?: string;
  /** Air that exhaust fans, dryers and hoods take out of the house. */
  exhaustFlowCfm: Cfm;
  /** Over-pressure of the wind on its side of the house; half of it pulls on the other side. */
  windPressurePa: Pascals;
  ductFan?: DuctFan;
  houseFan?: FanControl;
}

/** A fan is held to what one channel shows, or runs at one flow. Flow counts positive into the house or the ducts. */
export type FanControl =
  | { by: "channel"; signal: string; reference: string; targetPa: Pascals }
  | { by: "flow"; flowCfm: Cfm }
  | ({ by: "speed"; direction: FanDirection; speedShare: Share } & FanStrength);

/** What a fan can do at full speed. */
export interface FanStrength {
  freeFlowCfm: Cfm;
  /** Pressure that it builds when nothing passes. */
  shutOffPa: Pascals;
}

/** The test fan on the ducts with the flow restrictor in it. */
export interface DuctFan {
  direction: FanDirection;
  /** Where its flexible duct joins: a branch, "return" or "supply". */
  joins: string;
  /** The air on its other side: "house", a zone, or "outside". */
  standsIn: string;
  restrictor: { coefficient: number; exponent: Ratio };
  control: FanControl;
}

/** Nobody has touched anything: doors as people leave them, the equipment off. */
export const AS_FOUND: Situation = {
  isOutsideDoorOpen: false,
  areRoomDoorsShut: false,
  isAirHandlerOn: false,
  isFilterIn: true,
  areRegistersSealed: false,
  openBranchIds: [],
  hasBarrierAtEquipment: false,
  hasBarrierBeforeEquipment: false,
  exhaustFlowCfm: 0,
  windPressurePa: 0,
};

/** Every part that a hose can end in. */
export const OUTSIDE = "outside";
export const HOUSE = "house";
export const SUPPLY = "supply";
export const RETURN = "return";
export const FAN_INLET = "fan-inlet";
