import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import { normalQuantile } from "#lib/numeric/distributions.ts";
import type { Cfm, Ratio, Share } from "#lib/units/quantity.ts";

/** Two people who test the same ducts with the same care: standard deviation of one of them. Source: practice. */
export const OPERATOR_RELATIVE_UNCERTAINTY: Ratio = 0.05;
const USUAL_CONFIDENCE: Share = 0.95;

/**
 * How far an inspector's reading may lie from the contractor's before it is more than two people and two instruments
 * explain.
 * D = z √(u₁² + u₂² + 2 (r Q̄)²): both readings' own uncertainty, and the difference between operators r once for each.
 * Valid for readings above 0 and confidence .5 to .999. Source: form of the critical difference of iso-5725-6, r from
 * practice. Left out: what the ducts did between the two visits.
 * @throws InputProblem when a reading or an uncertainty is out of range.
 */
export function reinspectionTolerance({
  claimedCfm25,
  claimedStandardUncertaintyCfm25,
  inspectedCfm25,
  inspectedStandardUncertaintyCfm25,
  operatorRelativeUncertainty = OPERATOR_RELATIVE_UNCERTAINTY,
  confidenceProbability = USUAL_CONFIDENCE,
}: {
  claimedCfm25: Cfm;
  claimedStandardUncertaintyCfm25: Cfm;
  inspectedCfm25: Cfm;
  inspectedStandardUncertaintyCfm25: Cfm;
  operatorRelativeUncertainty?: Ratio;
  confidenceProbability?: Share;
}): { differenceCfm25: Cfm; toleranceCfm25: Cfm; isWithin: boolean } {
  requireAbove({ field: "claimedCfm25", label: "Claimed leakage", value: claimedCfm25, unit: "cfm" });
  requireAbove({ field: "inspectedCfm25", label: "Inspected leakage", value: inspectedCfm25, unit: "cfm" });
  for (const [field, value] of [
    ["claimedStandardUncertaintyCfm25", claimedStandardUncertaintyCfm25],
    ["inspectedStandardUncertaintyCfm25", inspectedStandardUncertaintyCfm25],
  ] as const)
    requireBetween({ field, label: "Standard uncertainty", value, low: 0, high: 10_000, unit: "cfm" });
  requireBetween({
    field: "operatorRelativeUncertainty",
    label: "Difference between operators",
    value: operatorRelativeUncertainty,
    low: 0,
    high: 0.5,
  });
  requireBetween({
    field: "confidenceProbability",
    label: "Confidence",
    value: confidenceProbability,
    low: 0.5,
    high: 0.999,
  });
  const ofOperatorCfm25 = (operatorRelativeUncertainty * (claimedCfm25 + inspectedCfm25)) / 2;
  const toleranceCfm25 =
    normalQuantile((1 + confidenceProbability) / 2) *
    Math.hypot(claimedStandardUncertaintyCfm25, inspectedStandardUncertaintyCfm25, ofOperatorCfm25, ofOperatorCfm25);
  const differenceCfm25 = inspectedCfm25 - claimedCfm25;
  return { differenceCfm25, toleranceCfm25, isWithin: Math.abs(differenceCfm25) <= toleranceCfm25 };
}
