import type { FanDirection } from "#lib/job/instrument-schema.ts";
import type { GaugeChannel, TapPoint } from "#lib/setup/gauge-channels.ts";
import type { FanConnection, RegisterCover } from "#lib/setup/setup-answers.ts";
import type { Share } from "#lib/units/quantity.ts";

/** Where a learner may put an end of a hose; a port without a hose takes the air where the learner stands. */
export type PracticeTap = TapPoint | "open-port";

export interface PracticeHoses {
  signal: PracticeTap;
  reference: PracticeTap;
}

/** The channels of the practice gauge. */
export type PracticeChannelId = Extract<GaugeChannel["id"], "duct" | "fan" | "house">;

/** Everything a learner chooses. */
export interface PracticeSetup {
  testKind: "total-leakage" | "leakage-to-outside";
  direction: FanDirection;
  restrictorId: string;
  hasFlowStraightener: boolean;
  fanConnection: FanConnection;
  personAt: "house" | "attic";
  hoses: Readonly<Record<PracticeChannelId, PracticeHoses>>;
  isOutsideDoorOpen: boolean;
  registerCover: RegisterCover;
  /** Registers without a cover. */
  forgottenBranchIds: readonly string[];
  isFilterIn: boolean;
  isAirHandlerOn: boolean;
  ductFanSpeedShare: Share;
  houseFanSpeedShare: Share;
}
