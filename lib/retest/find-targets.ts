import { refuse } from "#lib/errors/input-problem.ts";
import { nearestName } from "#lib/errors/nearest-name.ts";
import { requireAbove } from "#lib/errors/require-number.ts";
import type { Cfm, SquareFeet } from "#lib/units/quantity.ts";
import { TARGET_RULES, type TargetRule, type TargetStage } from "./targets.ts";

/** What a limit is reckoned from. What a rule needs and nobody knows leaves that rule out. */
export interface TargetBasis {
  conditionedFloorAreaFt2: SquareFeet;
  /** Of all the house's systems together. */
  fanFlowCfm?: Cfm;
  /** The same measure as the rule limits. */
  leakageBeforeCfm25?: { total?: Cfm; toOutside?: Cfm };
}

/** A rule with its limit for this house. */
export interface HouseTarget {
  rule: TargetRule;
  limitCfm25: Cfm;
}

const FLOOR_AREA_UNIT_FT2 = 100;

/** @throws InputProblem when no rule has the id, naming the nearest. */
export function targetRuleById(id: string): TargetRule {
  const rule = TARGET_RULES.find((each) => each.id === id);
  if (rule !== undefined) return rule;
  const ids = TARGET_RULES.map((each) => each.id);
  const meant = nearestName(id, ids);
  return refuse({
    field: "plan/targetId",
    detail: `No target rule is called ${JSON.stringify(id)}${meant ? `; did you mean ${JSON.stringify(meant)}?` : ""}`,
    fix: `Use one of ${ids.join(", ")}.`,
  });
}

/**
 * The limit of one rule for one house, in cfm at 25 Pa.
 * per floor area: c·A/100; share of airflow: s·Q; reduction: (1 − s)·L_before. Null where the rule needs a fan flow or
 * a leakage before that nobody knows. Source: iecc (the adopted local text governs).
 * @throws InputProblem when the floor area is not above zero.
 */
export function limitOf(rule: TargetRule, basis: TargetBasis): Cfm | null {
  requireAbove({
    field: "house/conditionedFloorAreaFt2",
    label: "Conditioned floor area",
    value: basis.conditionedFloorAreaFt2,
    unit: "ft²",
  });
  const { limit, measure } = rule;
  switch (limit.kind) {
    case "per-floor-area":
      return (limit.cfm25Per100Ft2 * basis.conditionedFloorAreaFt2) / FLOOR_AREA_UNIT_FT2;
    case "share-of-airflow":
      return basis.fanFlowCfm === undefined ? null : limit.airflowShare * basis.fanFlowCfm;
    case "reduction": {
      const before = measure === "total" ? basis.leakageBeforeCfm25?.total : basis.leakageBeforeCfm25?.toOutside;
      return before === undefined ? null : (1 - limit.reductionShare) * before;
    }
  }
}

/**
 * The limits of an edition that hold for one test of one house, each with its kind of test.
 * Rules of the same `alternativesGroup` are alternatives: one met is enough. Empty where the edition asks for no test
 * (before 2021, ducts wholly inside [from memory]).
 * @throws InputProblem when the edition is not known.
 */
export function targetsFor({
  edition,
  family = "new-ducts",
  stage,
  hasAirHandler,
  ductsWhollyInside,
  ...basis
}: TargetBasis & {
  edition: string;
  family?: TargetRule["family"];
  stage: TargetStage;
  hasAirHandler: boolean;
  ductsWhollyInside: boolean;
}): HouseTarget[] {
  const known = TARGET_RULES.filter((rule) => rule.family === family);
  const ofEdition = known.filter((rule) => rule.edition === edition);
  if (ofEdition.length === 0) {
    refuse({
      field: "edition",
      detail: `No limits are kept for the edition ${JSON.stringify(edition)}`,
      fix: `Use one of ${[...new Set(known.map((rule) => rule.edition))].join(", ")}, or enter your own limit.`,
    });
  }
  const asksForNoTest = family === "new-ducts" && ductsWhollyInside && Number(edition) < 2021;
  if (asksForNoTest) return [];
  return ofEdition
    .filter(
      (rule) =>
        rule.stage === stage &&
        (rule.hasAirHandler ?? hasAirHandler) === hasAirHandler &&
        (rule.ductsWhollyInside ?? ductsWhollyInside) === ductsWhollyInside,
    )
    .flatMap((rule) => {
      const limitCfm25 = limitOf(rule, basis);
      return limitCfm25 === null ? [] : [{ rule, limitCfm25 }];
    });
}
