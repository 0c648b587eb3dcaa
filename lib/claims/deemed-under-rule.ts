import { estimate } from "#lib/estimate/estimate.ts";
import type { ReferenceData } from "#lib/estimate/reference-data.ts";
import { deemedRuleById, roundByRule } from "#lib/savings/deemed-rules.ts";
import type { Claim } from "./claim-schema.ts";
import type { ProgramRule } from "./program-rule.ts";
import type { DeemedFigures } from "./replay-rule.ts";

type DeemedClaim = Pick<Claim, "job" | "deemed">;

interface Rules {
  from: ProgramRule;
  to: ProgramRule;
}

/** The deemed rule that a program's rule asks for; where it asks for none, the one that the job was reckoned by. */
const deemedRuleIdOf = ({ job }: DeemedClaim, rule: ProgramRule): string | undefined =>
  rule.deemedRuleId ?? job.plan?.deemedRuleId;

/**
 * Deemed figures of a claim under two rules, with the decimals that each rule reports: by the deemed rule that either
 * names. Where both name the same one they are those of the packet, else both are reckoned anew by this engine, so that
 * what differs is the rule alone. Null where a rule has none, or none for such a house. Source: derived.
 */
export async function deemedUnderRules(
  claim: DeemedClaim,
  { from, to }: Rules,
  loadReference: (job: Claim["job"]) => Promise<ReferenceData>,
): Promise<{ before: DeemedFigures | null; after: DeemedFigures | null }> {
  const [beforeId, afterId] = [deemedRuleIdOf(claim, from), deemedRuleIdOf(claim, to)];
  const { deemed } = claim;
  if (beforeId === afterId && (beforeId === undefined || deemed?.ruleId === beforeId)) {
    const claimed = deemed && rounded(deemed.ruleId, deemed);
    return { before: claimed, after: claimed };
  }
  const reference = await loadReference(claim.job);
  const under = async (deemedRuleId: string | undefined): Promise<DeemedFigures | null> => {
    if (deemedRuleId === undefined) return null;
    const result = await estimate({ ...claim.job, plan: { ...claim.job.plan, deemedRuleId } }, reference);
    return result.deemed && rounded(deemedRuleId, result.deemed);
  };
  const before = await under(beforeId);
  return { before, after: beforeId === afterId ? before : await under(afterId) };
}

function rounded(ruleId: string, { coolingKWh, heatingTherms, blowerKWh }: DeemedFigures): DeemedFigures {
  return roundByRule(deemedRuleById(ruleId), { coolingKWh, heatingTherms, blowerKWh });
}
