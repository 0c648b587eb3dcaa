import { type CalibratedRestrictor, rankRestrictors } from "#lib/air/choose-restrictor.ts";
import { refuse } from "#lib/errors/input-problem.ts";
import type { Cfm, Pascals, PoundsPerCubicFoot } from "#lib/units/quantity.ts";
import { fanFlow } from "./fan-flow.ts";

const pascals = (pressurePa: number) => `${Number(pressurePa.toPrecision(3))} Pa`;

/** A fan pressure outside the span of its flow restrictor's calibration, with the restrictor to take in its place. */
function adviseRestrictor(
  options: {
    restrictors: readonly CalibratedRestrictor[];
    fanAirDensityLbPerFt3?: number;
    calibrationDensityLbPerFt3?: number;
  },
  used: CalibratedRestrictor,
  flowCfm: Cfm,
): string {
  const best = rankRestrictors({ ...options, flowCfm }).find(
    (row) => row.restrictorId !== used.restrictorId && row.marginRatio >= 1,
  );
  if (best) return `Take ${best.restrictorLabel}: it should read about ${pascals(best.fanPressurePa)}.`;
  return flowCfm > 0 && used.coefficient * used.maxFanPressurePa ** used.exponent < flowCfm
    ? "No other restrictor of this fan reads so much flow: take a larger fan, or test supply and return apart."
    : "No other restrictor of this fan reads so little flow: take a smaller fan, or note the leakage as below its lowest reading.";
}

/**
 * Flow from the user's own calibration: one curve for each flow restrictor, all of one fan and one direction.
 * Q = C·P^n·√(ρ_cal/ρ). Valid inside the span of the restrictor's calibration. Source: astm-e779 (form of).
 * @throws InputProblem outside the span, naming the flow restrictor to take, and for a restrictor that is not listed.
 */
export function flowFromCalibration({
  restrictors,
  restrictorId,
  fanPressurePa,
  ...densities
}: {
  restrictors: readonly CalibratedRestrictor[];
  restrictorId: string;
  fanPressurePa: Pascals;
  fanAirDensityLbPerFt3?: PoundsPerCubicFoot;
  calibrationDensityLbPerFt3?: PoundsPerCubicFoot;
}): { flowCfm: Cfm } {
  const used = restrictors.find((row) => row.restrictorId === restrictorId);
  if (!used) {
    refuse({
      field: "restrictorId",
      detail: `The fan has no calibration for ${restrictorId} in this direction`,
      fix: `Name one of: ${restrictors.map((row) => row.restrictorId).join(", ") || "none entered yet"}.`,
    });
  }
  const { flowCfm } = fanFlow({ coefficient: used.coefficient, exponent: used.exponent, fanPressurePa, ...densities });
  if (!(fanPressurePa >= used.minFanPressurePa && fanPressurePa <= used.maxFanPressurePa)) {
    refuse({
      field: "fanPressurePa",
      code: "outside-calibration",
      detail: `A fan pressure of ${pascals(fanPressurePa)} is outside the span of ${used.restrictorLabel} (${pascals(used.minFanPressurePa)} to ${pascals(used.maxFanPressurePa)})`,
      fix: adviseRestrictor({ restrictors, ...densities }, used, flowCfm),
    });
  }
  return { flowCfm };
}
