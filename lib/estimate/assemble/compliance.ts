import type { Leakage } from "#lib/job/result/leakage-result.ts";
import type { Compliance, ScopeOption } from "#lib/job/result/plan-result.ts";
import { limitOf } from "#lib/retest/find-targets.ts";
import { judgeTarget } from "#lib/retest/judge-target.ts";
import { TARGET_RULES, type TargetRule } from "#lib/retest/targets.ts";
import type { Citation } from "#lib/sources/source.ts";
import { targetBasis } from "../find-target.ts";
import { outputKey } from "../kernel/write-outputs.ts";
import type { AssembleInput } from "./assemble-result.ts";
import { readRanged } from "./energy.ts";

/** Confidence of “meets it with confidence”. Source: jcgm-106, the usual choice. */
export const ASSURANCE_CONFIDENCE = 0.95;

interface Limit {
  id: string;
  title: string;
  measure: "total" | "to-outside";
  limitCfm25: number;
  source: Citation;
}

/** Finished-house limits that can be reckoned for this house, the plan's own target first. */
function limitsOf({ house, worth, target }: AssembleInput): Limit[] {
  const ductsInside = house.systems.every((system) => system.ducts.outsideAreaShare === 0);
  const fits = (rule: TargetRule) =>
    rule.stage === "finished" &&
    (rule.hasAirHandler ?? true) &&
    (rule.ductsWhollyInside ?? ductsInside) === ductsInside;
  const rules = TARGET_RULES.filter((rule) => fits(rule) && rule.id !== target?.id).flatMap((rule): Limit[] => {
    const limitCfm25 = limitOf(rule, targetBasis(house, worth));
    return limitCfm25 === null || !(limitCfm25 > 0)
      ? []
      : [{ id: rule.id, title: rule.title, measure: rule.measure, limitCfm25, source: rule.source }];
  });
  return target && target.limitCfm25 > 0 ? [target, ...rules] : rules;
}

/** Every rule with two statements: whether the reading meets it, and whether it does so with confidence. */
export function complianceOf(input: AssembleInput, leakage: Leakage, chosen: ScopeOption | null): Compliance[] {
  const { evaluated, worth, isVerified } = input;
  const after = (measure: Limit["measure"], from: "evaluated" | "predicted") =>
    readRanged(input[from], outputKey.plan(0, measure === "total" ? "predictedTotal" : "predictedToOutside")).value;
  return limitsOf(input).map((limit) => {
    const before = limit.measure === "total" ? leakage.totalCfm25.value : leakage.toOutsideCfm25.value;
    const relative =
      limit.measure === "total"
        ? worth.totalStandardUncertaintyCfm25 / worth.totalCfm25
        : worth.toOutsideStandardUncertaintyCfm25 / worth.toOutsideCfm25;
    const valueCfm25 = isVerified
      ? readRanged(evaluated, outputKey.plan(0, limit.measure === "total" ? "predictedTotal" : "predictedToOutside"))
          .value
      : before;
    const standardUncertaintyCfm25 = Number.isFinite(relative) ? relative * valueCfm25 : 0;
    const judged = judgeTarget({
      valueCfm25,
      standardUncertaintyCfm25: Math.max(standardUncertaintyCfm25, 0.1),
      limitCfm25: limit.limitCfm25,
      confidence: ASSURANCE_CONFIDENCE,
    });
    return {
      ruleId: limit.id,
      title: limit.title,
      measure: limit.measure,
      limitCfm25: limit.limitCfm25,
      valueCfm25,
      meetsRule: judged.meetsRule,
      meetsWithConfidence: judged.meetsWithConfidence,
      probability: judged.probability,
      predictedAfterCfm25: chosen ? after(limit.measure, "predicted") : before,
      source: limit.source,
    };
  });
}
