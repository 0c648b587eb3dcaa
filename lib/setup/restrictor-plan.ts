import { type RestrictorReading, rankRestrictors } from "#lib/air/choose-restrictor.ts";
import type { FanCalibration, FanDirection, TestFan } from "#lib/job/instrument-schema.ts";
import type { Cfm, Pascals } from "#lib/units/quantity.ts";

/** What one flow restrictor would show at the expected flow. */
export interface RestrictorOutlook {
  calibration: FanCalibration;
  expectedFanPressurePa: Pascals;
  reading: "inside-span" | "below-span" | "above-span";
}

export interface RestrictorPlan {
  /** The restrictor to fit before closing up; nothing when none of this fan reads the flow. */
  chosen?: RestrictorOutlook;
  /** All of this direction, best first. */
  outlooks: readonly RestrictorOutlook[];
  verdict: "chosen" | "fan-too-small" | "restrictors-too-large" | "gap-between-restrictors" | "no-calibration";
}

/**
 * Which flow restrictor to fit before closing up, for a flow that is only guessed, and what the fan will show.
 * The one deepest inside its span is taken (`rankRestrictors`): the guess may then be most wrong before it must be
 * changed. Valid for any number of restrictors. Source: own-method. Left out: air density, a few percent of pressure.
 * @throws InputProblem when the expected flow is not above 0.
 */
export function planRestrictor({
  fan,
  direction,
  expectedFlowCfm,
}: {
  fan: Pick<TestFan, "calibrations">;
  direction: FanDirection;
  expectedFlowCfm: Cfm;
}): RestrictorPlan {
  const restrictors = fan.calibrations.filter((calibration) => calibration.direction === direction);
  if (restrictors.length === 0) return { outlooks: [], verdict: "no-calibration" };
  const outlooks = rankRestrictors({ restrictors, flowCfm: expectedFlowCfm }).map((reading) =>
    outlookOf(restrictors.find(({ restrictorId }) => restrictorId === reading.restrictorId)!, reading),
  );
  const chosen = outlooks.find(({ reading }) => reading === "inside-span");
  return { chosen, outlooks, verdict: chosen ? "chosen" : verdictWithout(outlooks) };
}

function outlookOf(calibration: FanCalibration, { fanPressurePa, marginRatio }: RestrictorReading): RestrictorOutlook {
  const outside = fanPressurePa < calibration.minFanPressurePa ? "below-span" : "above-span";
  return { calibration, expectedFanPressurePa: fanPressurePa, reading: marginRatio >= 1 ? "inside-span" : outside };
}

function verdictWithout(outlooks: readonly RestrictorOutlook[]): RestrictorPlan["verdict"] {
  if (outlooks.every(({ reading }) => reading === "above-span")) return "fan-too-small";
  if (outlooks.every(({ reading }) => reading === "below-span")) return "restrictors-too-large";
  return "gap-between-restrictors";
}
