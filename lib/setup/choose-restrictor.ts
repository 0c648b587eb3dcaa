import { requireAbove } from "#lib/errors/require-number.ts";
import type { FanCalibration, FanDirection, TestFan } from "#lib/job/instrument-schema.ts";
import type { Cfm, Pascals } from "#lib/units/quantity.ts";

/** What one flow restrictor would show at the expected flow. */
export interface RestrictorOutlook {
  calibration: FanCalibration;
  expectedFanPressurePa: Pascals;
  reading: "inside-span" | "below-span" | "above-span";
}

export interface RestrictorChoice {
  /** Nothing when no restrictor of this fan reads the flow. */
  chosen?: RestrictorOutlook;
  /** All of this direction, largest opening first. */
  outlooks: readonly RestrictorOutlook[];
  verdict: "chosen" | "fan-too-small" | "restrictors-too-large" | "gap-between-restrictors" | "no-calibration";
}

/**
 * Fan pressure at which a calibration shows a flow.
 * P = (Q/C)^(1/n), the fan's calibration turned round. Valid for Q > 0. Source: derived. Left out: air density.
 * @throws InputProblem when the flow is not above 0.
 */
export function fanPressureForFlow({
  calibration,
  flowCfm,
}: {
  calibration: Pick<FanCalibration, "coefficient" | "exponent">;
  flowCfm: Cfm;
}): Pascals {
  requireAbove({ field: "flowCfm", label: "Expected flow", value: flowCfm, unit: "cfm" });
  return (flowCfm / calibration.coefficient) ** (1 / calibration.exponent);
}

/**
 * Which flow restrictor to fit before closing up, for a flow that is only guessed.
 * Among those that read the flow inside their span, the one with most room to the nearer end, as a ratio of flows:
 * the guess may then be most wrong before the restrictor must be changed. Ties go to the smaller opening, which shows
 * the higher fan pressure. Valid for any number of restrictors. Source: own-method.
 * @throws InputProblem when the expected flow is not above 0.
 */
export function chooseRestrictor({
  fan,
  direction,
  expectedFlowCfm,
}: {
  fan: Pick<TestFan, "calibrations">;
  direction: FanDirection;
  expectedFlowCfm: Cfm;
}): RestrictorChoice {
  const outlooks = fan.calibrations
    .filter((calibration) => calibration.direction === direction)
    .map((calibration) => outlookOf(calibration, expectedFlowCfm))
    .sort((a, b) => a.expectedFanPressurePa - b.expectedFanPressurePa);
  const inside = outlooks.filter((outlook) => outlook.reading === "inside-span");
  const chosen = inside.reduce<RestrictorOutlook | undefined>(
    (best, outlook) => (best === undefined || roomInSpan(outlook) >= roomInSpan(best) ? outlook : best),
    undefined,
  );
  return { chosen, outlooks, verdict: chosen ? "chosen" : verdictWithout(outlooks) };
}

function outlookOf(calibration: FanCalibration, flowCfm: Cfm): RestrictorOutlook {
  const expectedFanPressurePa = fanPressureForFlow({ calibration, flowCfm });
  const reading =
    expectedFanPressurePa < calibration.minFanPressurePa
      ? "below-span"
      : expectedFanPressurePa > calibration.maxFanPressurePa
        ? "above-span"
        : "inside-span";
  return { calibration, expectedFanPressurePa, reading };
}

/** Logarithm of the factor by which the flow may differ from the guess before the reading leaves the span. */
function roomInSpan({ calibration, expectedFanPressurePa }: RestrictorOutlook): number {
  const down = Math.log(expectedFanPressurePa / calibration.minFanPressurePa);
  const up = Math.log(calibration.maxFanPressurePa / expectedFanPressurePa);
  return calibration.exponent * Math.min(down, up);
}

function verdictWithout(outlooks: readonly RestrictorOutlook[]): RestrictorChoice["verdict"] {
  if (outlooks.length === 0) return "no-calibration";
  if (outlooks.every((outlook) => outlook.reading === "above-span")) return "fan-too-small";
  if (outlooks.every((outlook) => outlook.reading === "below-span")) return "restrictors-too-large";
  return "gap-between-restrictors";
}
