import { ENVELOPE_LEAK_EXPONENT, flowAtPressure, requireLeakExponent } from "#lib/air/flow-at-pressure.ts";
import { refuse } from "#lib/errors/input-problem.ts";
import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { ValidityNote } from "#lib/errors/validity-note.ts";
import { normalQuantile } from "#lib/numeric/distributions.ts";
import { medianAbove } from "#lib/numeric/median-above.ts";
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

/** A difference is told from none when it is above so many of its standard uncertainties. Source: practice. */
const TOLD_ABOVE = 2;
/** Least leakage that is told, over its standard uncertainty. Source: own-method, from simulated houses. */
const LEAST_TOLD = 0.25;
/** One-sided confidence of the highest leakage that the readings allow. */
const HIGH_CONFIDENCE = 0.95;

/** How much the sealed registers' pressure says of what the subtraction missed: CF = 50^n/(50^n − (50 − P)^n). */
export function subtractionCorrection(ductToHousePressurePa: Pascals, exponent: Ratio): Ratio {
  const full = HOUSE_PRESSURE_PA ** exponent;
  return full / (full - (HOUSE_PRESSURE_PA - ductToHousePressurePa) ** exponent);
}

/**
 * The leakage of a difference that was large enough to be told. Only those that chance made large are: freed from that
 * bias it is as often too high as too low, and as doubtful as the difference and the correction together.
 */
export interface SubtractionTold {
  leakageCfm50: Cfm;
  leakageCfm25: Cfm;
  standardUncertaintyCfm25: Cfm;
}

export interface BlowerDoorSubtraction {
  correctionFactor: Ratio;
  leakageToOutsideCfm50: Cfm;
  leakageToOutsideCfm25: Cfm;
  standardUncertaintyCfm50: Cfm;
  /** What leaks at most, with 95 % confidence. */
  leakageHighCfm50: Cfm;
  /** Absent where the difference cannot be told from none. */
  told?: SubtractionTold;
  notes: readonly ValidityNote[];
}

/**
 * Leakage to outside as the difference of two blower-door tests, with open and with sealed registers.
 * L₅₀ = (W − E)·CF, CF = 50^n/(50^n − (50 − P)^n), P the size of duct to house with sealed registers; 25 Pa by the
 * same exponent. u² = CF²·r²·(W² + E² − 2cWE) + ((W − E)·dCF/dP·u_P)². Told only above 2u, then as the median of the normal
 * distribution cut off there. Valid for P of 15 to 50 Pa. Source: derived;
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
  const at25Pa = (flowCfm50: Cfm): Cfm => flowAtPressure(flowCfm50, HOUSE_PRESSURE_PA, 25, exponent);
  const unselectedCfm50 = freedFromTelling(leakageToOutsideCfm50, standardUncertaintyCfm50);
  const told = unselectedCfm50 !== undefined && {
    leakageCfm50: unselectedCfm50,
    leakageCfm25: at25Pa(unselectedCfm50),
    standardUncertaintyCfm25: at25Pa(Math.hypot(standardUncertaintyCfm50, leakageToOutsideCfm50 - unselectedCfm50)),
  };
  const leakageHighCfm50 = leakageToOutsideCfm50 + normalQuantile(HIGH_CONFIDENCE) * standardUncertaintyCfm50;
  return {
    correctionFactor,
    leakageToOutsideCfm50,
    leakageToOutsideCfm25: at25Pa(leakageToOutsideCfm50),
    standardUncertaintyCfm50,
    leakageHighCfm50,
    ...(told ? { told } : {}),
    notes: told ? [] : cannotTell(leakageToOutsideCfm50, standardUncertaintyCfm50, leakageHighCfm50),
  };
}

/** Undefined where the difference is within its doubt. Leakage is not negative, so it is held a little above zero. */
function freedFromTelling(leakageCfm50: Cfm, uncertaintyCfm50: Cfm): Cfm | undefined {
  const threshold = TOLD_ABOVE * uncertaintyCfm50;
  if (!(leakageCfm50 > threshold)) return undefined;
  const freed = medianAbove({ value: leakageCfm50, standardUncertainty: uncertaintyCfm50, threshold });
  return Math.max(freed, LEAST_TOLD * uncertaintyCfm50);
}

/** |dCF/dP|. The curve of (50 − P)^n is vertical at 50 Pa; a pascal below it stands in there. */
function correctionSlope(pressurePa: Pascals, exponent: Ratio): number {
  const left = Math.max(HOUSE_PRESSURE_PA - pressurePa, 1);
  const full = HOUSE_PRESSURE_PA ** exponent;
  return (full * exponent * left ** (exponent - 1)) / (full - left ** exponent) ** 2;
}

function cannotTell(leakageCfm50: Cfm, uncertaintyCfm50: Cfm, highCfm50: Cfm): ValidityNote[] {
  return [
    {
      code: "difference-within-doubt",
      severity: "doubt",
      what: `The leakage of ${Math.round(leakageCfm50)} cfm at 50 Pa has a standard uncertainty of ${Math.round(uncertaintyCfm50)} cfm.`,
      why: `It is the small difference of two large flows: all that can be said is that, 19 times in 20, at most ${Math.round(highCfm50)} cfm leak to outside.`,
      nextMove: "Measure the leakage to outside with a fan on the ducts and the house at the same pressure.",
    },
  ];
}
