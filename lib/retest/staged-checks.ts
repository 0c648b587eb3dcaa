import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import { normalQuantile } from "#lib/numeric/distributions.ts";
import type { Cfm, Share } from "#lib/units/quantity.ts";

/** A part of the work after which the fan is switched on once, such as all leaks of one place. */
export interface WorkStage {
  siteIds: readonly string[];
  /** What was sealed, in words: "the attic". */
  title: string;
  removesCfm25: Cfm;
  standardUncertaintyCfm25: Cfm;
}

export interface StagedCheck {
  afterSiteIds: readonly string[];
  /** Go on when the gauge reads below. */
  stopBelowCfm25: Cfm;
  say: string;
}

/**
 * What the gauge must show along the work so that the rest of it still reaches the target.
 * After stage k: threshold = acceptance + Σ_{j>k} removes_j − z √(Σ_{j>k} u_j²), never below the acceptance itself nor
 * below a later threshold.
 * Above it the leaks already sealed did not give what was expected: better looked at again now than at the end.
 * Source: own-method. Left out: that stages of one crew may be off together.
 * @throws InputProblem when a number is outside its range.
 */
export function stagedChecks({
  stages,
  acceptanceCfm25,
  confidence,
}: {
  stages: readonly WorkStage[];
  acceptanceCfm25: Cfm;
  confidence: Share;
}): StagedCheck[] {
  requireAbove({ field: "acceptanceCfm25", label: "Acceptance limit", value: acceptanceCfm25, unit: "cfm" });
  requireBetween({ field: "confidence", label: "Confidence", value: confidence, low: 0.5, high: 0.9999 });
  stages.forEach((stage, index) => {
    for (const name of ["removesCfm25", "standardUncertaintyCfm25"] as const) {
      requireBetween({
        field: `stages/${index}/${name}`,
        label: name,
        value: stage[name],
        unit: "cfm",
        low: 0,
        high: 1e5,
      });
    }
  });
  const z = normalQuantile(confidence);
  const thresholds: Cfm[] = [];
  let expected = 0;
  let variance = 0;
  // From the last stage back: what is still to do grows, and so does the threshold.
  for (const stage of [...stages].reverse()) {
    const threshold = acceptanceCfm25 + Math.max(0, expected - z * Math.sqrt(variance));
    thresholds.unshift(Math.max(threshold, thresholds[0] ?? 0));
    expected += stage.removesCfm25;
    variance += stage.standardUncertaintyCfm25 ** 2;
  }
  return stages.map((stage, index) => {
    const stopBelowCfm25 = thresholds[index]!;
    const reading = Math.floor(stopBelowCfm25);
    return {
      afterSiteIds: stage.siteIds,
      stopBelowCfm25,
      say:
        index < stages.length - 1
          ? `After ${stage.title}: go on when the test reads ${reading} cfm or less. Above that, look again at what was sealed here.`
          : `After ${stage.title}: done when the test reads ${reading} cfm or less.`,
    };
  });
}
