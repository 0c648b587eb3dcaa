import type { Cfm, Share } from "#lib/units/quantity.ts";
import { conformanceProbability } from "./conformance-probability.ts";
import { guardBand } from "./guard-band.ts";

/** Two statements, never one: what the rule asks, and what can be said with confidence. */
export interface TargetJudgment {
  /** The reading itself is at or below the limit: what programs and codes ask. */
  meetsRule: boolean;
  /** It is also at or below the guarded limit. */
  meetsWithConfidence: boolean;
  probability: Share;
  acceptanceCfm25: Cfm;
}

/**
 * Judges a leakage against a limit.
 * Rule: y ≤ U. With confidence: y ≤ U/(1 + z r), r the relative standard uncertainty of the reading. Source: jcgm-106.
 * @throws InputProblem as `guardBand` and `conformanceProbability`.
 */
export function judgeTarget({
  valueCfm25,
  standardUncertaintyCfm25,
  limitCfm25,
  confidence,
}: {
  valueCfm25: Cfm;
  standardUncertaintyCfm25: Cfm;
  limitCfm25: Cfm;
  confidence: Share;
}): TargetJudgment {
  const { probability } = conformanceProbability({
    value: valueCfm25,
    standardUncertainty: standardUncertaintyCfm25,
    upperLimit: limitCfm25,
  });
  // A doubt larger than the reading itself is no share of it: then it stands as it is. Both say p ≥ confidence.
  const isShareOfReading = valueCfm25 >= standardUncertaintyCfm25 && valueCfm25 > 0;
  const { acceptanceLimit } = guardBand({
    upperLimit: limitCfm25,
    confidence,
    ...(isShareOfReading
      ? { relativeStandardUncertainty: standardUncertaintyCfm25 / valueCfm25 }
      : { standardUncertainty: standardUncertaintyCfm25 }),
  });
  return {
    meetsRule: valueCfm25 <= limitCfm25,
    meetsWithConfidence: valueCfm25 <= acceptanceLimit,
    probability,
    acceptanceCfm25: acceptanceLimit,
  };
}
