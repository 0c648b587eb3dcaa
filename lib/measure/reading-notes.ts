import { standardPressure } from "#lib/air/air-density.ts";
import { type CalibratedRestrictor, rankRestrictors } from "#lib/air/choose-restrictor.ts";
import { flowOnFanCurve } from "#lib/air/fan-curve.ts";
import { STANDARD_AIR_DENSITY } from "#lib/air/standard-air.ts";
import type { ValidityNote } from "#lib/errors/validity-note.ts";
import type { Cfm, Feet, Pascals } from "#lib/units/quantity.ts";

/** Limits of trade practice for a reading that can be trusted. Source: practice, unless a standard is named. */
const LARGEST_BASELINE_SHARE = 0.2;
/** A density correction below this is lost in the fan's own doubt. */
const SMALL_DENSITY_SHARE = 0.02;
/** Two different people never read 25 Pa the same to a tenth; a gauge within a quarter pascal counts as reached. */
const REACHED_TOLERANCE_PA = 0.25;
const LARGEST_LEFTOVER_PA = 0.5;

const pascals = (value: number) => `${Number(value.toFixed(1))} Pa`;
const cfm = (value: number) => `${Math.round(value)} cfm`;

/** The fan pressure lies outside the span over which the flow restrictor was calibrated. */
export function noteFanPressureOutsideSpan({
  fanPressurePa,
  restrictorId,
  restrictors,
}: {
  fanPressurePa: Pascals;
  restrictorId: string;
  restrictors: readonly CalibratedRestrictor[];
}): ValidityNote | null {
  const used = restrictors.find((row) => row.restrictorId === restrictorId);
  if (!used || !(fanPressurePa > 0)) return null;
  if (fanPressurePa >= used.minFanPressurePa && fanPressurePa <= used.maxFanPressurePa) return null;
  const isLow = fanPressurePa < used.minFanPressurePa;
  const density = STANDARD_AIR_DENSITY.value;
  const flowCfm = flowOnFanCurve(used, fanPressurePa, density, density);
  const better = rankRestrictors({ restrictors, flowCfm }).find((row) => row.marginRatio >= 1);
  return {
    code: "fan-pressure-outside-span",
    severity: "doubt",
    what: `The fan pressure of ${pascals(fanPressurePa)} is ${isLow ? "below" : "above"} the span of ${used.restrictorLabel} (${pascals(used.minFanPressurePa)} to ${pascals(used.maxFanPressurePa)}).`,
    why: "Outside its span the calibration is a guess, and the flow may be off by a tenth or more.",
    nextMove: better
      ? `Change to ${better.restrictorLabel}; expect about ${pascals(better.fanPressurePa)} on the fan.`
      : isLow
        ? "No restrictor of this fan reads so little: use a smaller fan, or report the leakage as below its lowest reading."
        : "No restrictor of this fan reads so much: look for an open register or a loose duct, or use a larger fan.",
  };
}

/** Pushing air in raises the pressure, pulling it out lowers it; anything else is a swapped hose. */
export function noteWrongSign({
  pressurePa,
  direction,
}: {
  pressurePa: Pascals;
  direction: "pushing" | "pulling";
}): ValidityNote | null {
  if (!(direction === "pushing" ? pressurePa < 0 : pressurePa > 0)) return null;
  return {
    code: "wrong-sign",
    severity: "problem",
    what: `The pressure reads ${pascals(pressurePa)} while the fan is ${direction === "pushing" ? "pushing air in" : "pulling air out"}.`,
    why: `${direction === "pushing" ? "Pushing must give a positive pressure" : "Pulling must give a negative pressure"}; two hoses are swapped, or the direction is entered wrongly.`,
    nextMove: "Check which is the signal hose and which the reference hose, then the direction of the fan.",
  };
}

/** A baseline that is a large part of the reading makes wind look like leakage. */
export function noteLargeBaseline({
  baselinePa,
  pressurePa,
}: {
  baselinePa: Pascals;
  pressurePa: Pascals;
}): ValidityNote | null {
  const size = Math.abs(pressurePa);
  if (!(Math.abs(baselinePa) > LARGEST_BASELINE_SHARE * size)) return null;
  return {
    code: "baseline-large",
    severity: "doubt",
    what: `The baseline of ${pascals(baselinePa)} is more than a fifth of the reading of ${pascals(pressurePa)}.`,
    why: "Wind or a running fan drives part of what the gauge shows, and it changes while you read.",
    nextMove: "Switch off every fan, close the doors to wind, average over a minute, or come back on a calmer day.",
  };
}

/** 25 Pa was not reached: what is reported is carried up from the highest steady pressure. */
export function noteReferenceNotReached({
  highestPressurePa,
  referencePressurePa,
}: {
  highestPressurePa: Pascals;
  referencePressurePa: Pascals;
}): ValidityNote | null {
  if (!(highestPressurePa < referencePressurePa - REACHED_TOLERANCE_PA)) return null;
  return {
    code: "reference-not-reached",
    severity: "doubt",
    what: `The highest pressure was ${pascals(highestPressurePa)}; the leakage at ${pascals(referencePressurePa)} is extrapolated.`,
    why: "The exponent that carries the value up is assumed, which adds to its doubt.",
    nextMove:
      "Look for masking that came off, then for a disconnected duct; then take a larger restrictor or fan. If none helps, keep the value: it stays marked as extrapolated.",
  };
}

/** Thin air at altitude: a flow read from the gauge may lack the density correction. */
export function noteDensityLeftOut({
  elevationFt,
  isCorrected,
}: {
  elevationFt: Feet;
  isCorrected: boolean;
}): ValidityNote | null {
  const share = Math.sqrt(standardPressure(0) / standardPressure(elevationFt)) - 1;
  if (isCorrected || !(share > SMALL_DENSITY_SHARE)) return null;
  return {
    code: "density-not-corrected",
    severity: "doubt",
    what: `The flow was entered as the gauge showed it, at ${Math.round(elevationFt)} ft.`,
    why: `In thin air a test fan moves about ${Math.round(share * 100)} % more than its standard-air reading says.`,
    nextMove: "Enter the fan pressure and the restrictor instead, or confirm that the gauge corrected for density.",
  };
}

/** Ducts and house did not stand at the same pressure in a test of the leakage to outside. */
export function noteLeftoverPressure({
  ductToHousePressurePa,
}: {
  ductToHousePressurePa: Pascals;
}): ValidityNote | null {
  if (!(Math.abs(ductToHousePressurePa) > LARGEST_LEFTOVER_PA)) return null;
  return {
    code: "leftover-pressure",
    severity: "doubt",
    what: `Ducts and house still differed by ${pascals(ductToHousePressurePa)}.`,
    why: "Air then leaks between ducts and rooms too, and counts as leakage to outside.",
    nextMove: "Adjust the duct fan until ducts to house reads 0 Pa, within half a pascal, and read again.",
  };
}

/** More leakage to outside than in total, by more than their doubt. */
export function noteToOutsideAboveTotal({
  toOutsideCfm25,
  totalCfm25,
  standardUncertaintyCfm25,
}: {
  toOutsideCfm25: Cfm;
  totalCfm25: Cfm;
  /** Of the difference. */
  standardUncertaintyCfm25: Cfm;
}): ValidityNote | null {
  if (!(toOutsideCfm25 > totalCfm25 + standardUncertaintyCfm25)) return null;
  return {
    code: "to-outside-above-total",
    severity: "problem",
    what: `The leakage to outside (${cfm(toOutsideCfm25)}) is above the total (${cfm(totalCfm25)}).`,
    why: "What reaches outside is a part of the total, so one of the two readings is wrong.",
    nextMove:
      "Check the masking and the restrictor of the total test, then that house and ducts stood at the same pressure.",
  };
}

/** Two readings that agree in every digit: real readings never do. */
export function noteRepeatedReading({ where }: { where: string }): ValidityNote {
  return {
    code: "reading-repeated",
    severity: "doubt",
    what: `${where} show the same pressure and flow to the last digit.`,
    why: "Real readings differ in the last digit; a copied number hides what was measured.",
    nextMove: "Read again, or note why the numbers are the same.",
  };
}

/** Steps that whoever read them kept, but does not trust. They count all the same; the mark goes with the result. */
export function noteMarkedDoubtful({ stepNumbers }: { stepNumbers: readonly number[] }): ValidityNote | null {
  if (stepNumbers.length === 0) return null;
  const many = stepNumbers.length > 1;
  return {
    code: "marked-doubtful",
    severity: "doubt",
    what: `Step${many ? "s" : ""} ${stepNumbers.join(", ")} ${many ? "are" : "is"} kept but marked doubtful.`,
    why: "Whoever read the gauge did not trust it, and the result stands on it.",
    nextMove: many ? "Read them again when you can." : "Read it again when you can.",
  };
}

/** A flow restrictor changed in mid-test, which is right where a span ends and has to stay with the steps. */
export function noteRestrictorChanged({
  restrictorIds,
  restrictors,
}: {
  /** Of each step, in the order in which they were read. */
  restrictorIds: readonly (string | undefined)[];
  restrictors: readonly CalibratedRestrictor[];
}): ValidityNote | null {
  const labelOf = (id: string) => restrictors.find(({ restrictorId }) => restrictorId === id)?.restrictorLabel ?? id;
  const changes = restrictorIds.flatMap((id, index) => {
    const before = restrictorIds[index - 1];
    return id !== undefined && before !== undefined && id !== before ? [{ before, id, step: index + 1 }] : [];
  });
  const [first] = changes;
  if (!first) return null;
  const more = changes.length > 1 ? ` and ${changes.length - 1} more` : "";
  return {
    code: "restrictor-changed",
    severity: "note",
    what: `The flow restrictor was changed from ${labelOf(first.before)} to ${labelOf(first.id)} at step ${first.step}${more}.`,
    why: "Each step is read by the calibration of its own; what two restrictors differ by looks like scatter.",
    nextMove: "Where the line through the steps breaks there, read one step with both.",
  };
}
