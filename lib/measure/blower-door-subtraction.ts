import { ENVELOPE_LEAK_EXPONENT, flowAtPressure, requireLeakExponent } from "#lib/air/flow-at-pressure.ts";
import { refuse } from "#lib/errors/input-problem.ts";
import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { ValidityNote } from "#lib/errors/validity-note.ts";
import type { SourcedValue } from "#lib/sources/source.ts";
import type { Cfm, Pascals, Ratio } from "#lib/units/quantity.ts";

/** House pressure of the test. */
const HOUSE_PRESSURE_PA = 50;
/** Below this duct pressure the correction runs away. */
const LOWEST_DUCT_PRESSURE_PA = 15;

export const BLOWER_DOOR_FLOW_UNCERTAINTY = {
  value: 0.03,
  unit: "ratio",
  source: { sourceId: "practice", locator: "one blower-door flow, standard uncertainty" },
} as const satisfies SourcedValue;

/** How much the sealed registers' pressure says of what the subtraction missed: CF = 50^n/(50^n − (50 − P)^n). */
export function subtractionCorrection(ductToHousePressurePa: Pascals, exponent: Ratio): Ratio {
  const full = HOUSE_PRESSURE_PA ** exponent;
  return full / (full - (HOUSE_PRESSURE_PA - ductToHousePressurePa) ** exponent);
}

export interface BlowerDoorSubtraction {
  correctionFactor: Ratio;
  leakageToOutsideCfm50: Cfm;
  leakageToOutsideCfm25: Cfm;
  standardUncertaintyCfm50: Cfm;
  notes: readonly ValidityNote[];
}

/**
 * Leakage to outside as the difference of two blower-door tests, with open and with sealed registers.
 * L₅₀ = (W − E)·CF, CF = 50^n/(50^n − (50 − P)^n), P the size of duct to house with sealed registers; 25 Pa by the
 * same exponent. u² = CF²·r²·(W² + E² − 2cWE) + ((W − E)·dCF/dP·u_P)². Valid for P of 15 to 50 Pa. Source: derived;
 * equals the table that rule books reprint. Left out: the exponent's own doubt.
 * @throws InputProblem under 15 Pa, and when sealing the registers raised the flow.
 */
export function blowerDoorSubtraction({
  wholeHouseCfm50,
  envelopeCfm50,
  ductToHousePressurePa,
  exponent = ENVELOPE_LEAK_EXPONENT.value,
  flowRelativeUncertainty = BLOWER_DOOR_FLOW_UNCERTAINTY.value,
  flowCorrelation = 0,
  pressureUncertaintyPa = 1,
}: {
  wholeHouseCfm50: Cfm;
  envelopeCfm50: Cfm;
  ductToHousePressurePa: Pascals;
  exponent?: Ratio;
  flowRelativeUncertainty?: Ratio;
  flowCorrelation?: Ratio;
  pressureUncertaintyPa?: Pascals;
}): BlowerDoorSubtraction {
  requireAbove({ field: "wholeHouseCfm50", label: "House with registers open", value: wholeHouseCfm50, unit: "cfm" });
  requireAbove({ field: "envelopeCfm50", label: "House with registers sealed", value: envelopeCfm50, unit: "cfm" });
  const pressurePa = Math.abs(ductToHousePressurePa);
  requireBetween({
    field: "ductToHousePressurePa",
    label: "Duct to house, registers sealed",
    value: pressurePa,
    unit: "Pa",
    low: LOWEST_DUCT_PRESSURE_PA,
    high: HOUSE_PRESSURE_PA,
    fix: "Under 15 Pa the ducts leak more to the rooms than to outside: measure with a fan on the ducts instead.",
  });
  requireLeakExponent(exponent);
  requireBetween({
    field: "flowRelativeUncertainty",
    label: "Doubt of a flow",
    value: flowRelativeUncertainty,
    low: 0,
    high: 0.5,
  });
  requireBetween({
    field: "flowCorrelation",
    label: "Correlation of the flows",
    value: flowCorrelation,
    low: -1,
    high: 1,
  });
  requireBetween({
    field: "pressureUncertaintyPa",
    label: "Doubt of the pressure",
    value: pressureUncertaintyPa,
    unit: "Pa",
    low: 0,
    high: 20,
  });
  const difference = wholeHouseCfm50 - envelopeCfm50;
  if (!(difference >= 0)) {
    refuse({
      field: "envelopeCfm50",
      detail: "Sealing the registers raised the flow of the house",
      fix: "Check that the two values are not swapped, then test again in calm weather.",
    });
  }
  const correctionFactor = subtractionCorrection(pressurePa, exponent);
  const flowUncertainty =
    correctionFactor *
    flowRelativeUncertainty *
    // a² + b² − 2ρab in the form that rounding cannot bring below zero.
    Math.sqrt(difference ** 2 + 2 * (1 - flowCorrelation) * wholeHouseCfm50 * envelopeCfm50);
  const pressureUncertainty = difference * correctionSlope(pressurePa, exponent) * pressureUncertaintyPa;
  const leakageToOutsideCfm50 = difference * correctionFactor;
  const standardUncertaintyCfm50 = Math.hypot(flowUncertainty, pressureUncertainty);
  return {
    correctionFactor,
    leakageToOutsideCfm50,
    leakageToOutsideCfm25: flowAtPressure(leakageToOutsideCfm50, HOUSE_PRESSURE_PA, 25, exponent),
    standardUncertaintyCfm50,
    notes: judgeSubtraction(leakageToOutsideCfm50, standardUncertaintyCfm50),
  };
}

/** |dCF/dP|. The curve of (50 − P)^n is vertical at 50 Pa; a pascal below it stands in there. */
function correctionSlope(pressurePa: Pascals, exponent: Ratio): number {
  const left = Math.max(HOUSE_PRESSURE_PA - pressurePa, 1);
  const full = HOUSE_PRESSURE_PA ** exponent;
  return (full * exponent * left ** (exponent - 1)) / (full - left ** exponent) ** 2;
}

function judgeSubtraction(leakageCfm50: Cfm, uncertaintyCfm50: Cfm): ValidityNote[] {
  if (leakageCfm50 > 2 * uncertaintyCfm50) return [];
  return [
    {
      code: "difference-within-doubt",
      severity: "doubt",
      what: `The leakage of ${Math.round(leakageCfm50)} cfm at 50 Pa has a standard uncertainty of ${Math.round(uncertaintyCfm50)} cfm.`,
      why: "It is the small difference of two large flows: it cannot be told from no leakage, nor before from after.",
      nextMove: "Measure the leakage to outside with a fan on the ducts and the house at the same pressure.",
    },
  ];
}
