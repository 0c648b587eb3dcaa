import { type CalibratedRestrictor, rankRestrictors } from "#lib/air/choose-restrictor.ts";
import { requireAbove } from "#lib/errors/require-number.ts";
import type { Cfm, Pascals, PoundsPerCubicFoot, Ratio, Share } from "#lib/units/quantity.ts";
import { guardBand } from "./guard-band.ts";

/** What the gauge of the test fan shows with one flow restrictor when the ducts just meet the limit. */
export interface RetestReading {
  restrictorId: string;
  title: string;
  fanPressureAtLimitPa: Pascals;
  fanPressureAtAcceptancePa: Pascals;
}

export interface RetestPlan {
  limitCfm25: Cfm;
  /** At or below this reading the limit is met with the confidence asked for. */
  acceptanceCfm25: Cfm;
  /** The best flow restrictor first; empty where no calibration is at hand or none reads so little. */
  readings: readonly RetestReading[];
}

/**
 * The numbers to look for at a retest: the limit, the reading that meets it with confidence, and the fan pressure of
 * each flow restrictor at both, duct pressure held at 25 Pa.
 * acceptance = U/(1 + z r); P = (Q/C)^(1/n)·(density). Only restrictors whose calibration spans both are listed.
 * Sources: jcgm-106 §8.3; astm-e779 (form of). Left out: a retest that cannot reach 25 Pa.
 * @throws InputProblem when the limit is not above zero, or as `guardBand`.
 */
export function planRetest({
  limitCfm25,
  relativeStandardUncertainty,
  confidence,
  restrictors,
  ...densities
}: {
  limitCfm25: Cfm;
  /** Of one reading, from instrument and repetition together. */
  relativeStandardUncertainty: Ratio;
  confidence: Share;
  /** Of the fan and direction that will be used; empty when no calibration was entered. */
  restrictors: readonly CalibratedRestrictor[];
  fanAirDensityLbPerFt3?: PoundsPerCubicFoot;
  calibrationDensityLbPerFt3?: PoundsPerCubicFoot;
}): RetestPlan {
  requireAbove({ field: "limitCfm25", label: "Limit", value: limitCfm25, unit: "cfm" });
  const { acceptanceLimit } = guardBand({ upperLimit: limitCfm25, relativeStandardUncertainty, confidence });
  return {
    limitCfm25,
    acceptanceCfm25: acceptanceLimit,
    readings: restrictors.length === 0 ? [] : readingsAt({ limitCfm25, acceptanceLimit, restrictors, ...densities }),
  };
}

function readingsAt({
  limitCfm25,
  acceptanceLimit,
  ...fan
}: {
  limitCfm25: Cfm;
  acceptanceLimit: Cfm;
  restrictors: readonly CalibratedRestrictor[];
}): RetestReading[] {
  const atLimit = new Map(rankRestrictors({ ...fan, flowCfm: limitCfm25 }).map((row) => [row.restrictorId, row]));
  return rankRestrictors({ ...fan, flowCfm: acceptanceLimit }).flatMap((row) => {
    const limit = atLimit.get(row.restrictorId)!;
    if (row.marginRatio < 1 || limit.marginRatio < 1) return [];
    return [
      {
        restrictorId: row.restrictorId,
        title: row.restrictorLabel,
        fanPressureAtLimitPa: limit.fanPressurePa,
        fanPressureAtAcceptancePa: row.fanPressurePa,
      },
    ];
  });
}
