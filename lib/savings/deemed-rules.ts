import { refuse } from "#lib/errors/input-problem.ts";
import type { Citation } from "#lib/sources/source.ts";
import type { DeemedSavings } from "./deemed-leakage-savings.ts";

/** One edition of a program's rule, as data. The text that the program adopted governs. */
export interface DeemedRule {
  id: string;
  title: string;
  edition: string;
  /** First day it holds, YYYY-MM-DD; null where only the order of editions is known. */
  effectiveFrom: string | null;
  /** Which method computes it. */
  formula: "deemed-leakage-savings" | "deemed-efficiency-savings";
  /** Inputs of that method which the rule fixes. */
  constants: Readonly<Record<string, number>>;
  /** Part of the cooling saved at full load that falls into the program's peak hours. */
  coincidenceFactor: number;
  /** A house tested at 50 Pa: the rule's factor from 50 to 25 Pa. */
  cfm25PerCfm50Factor: number;
  /** Decimals that the rule reports each saving with. */
  rounding: Readonly<Record<keyof DeemedSavings, number>>;
  source: Citation;
  note: string;
}

const wholeNumbers = { coolingKWh: 0, heatingTherms: 0, blowerKWh: 0 } as const;
const remembered = "Remembered, arithmetic confirmed; check against the adopted text and edit.";
/** Central air conditioners in the hours of the system's summer peak. Source: il-trm, from memory. */
const SUMMER_PEAK_COINCIDENCE = 0.68;
const title = "Residential duct insulation and sealing";

export const DEEMED_RULES: readonly DeemedRule[] = [
  {
    id: "il-trm-method-1",
    title: `${title}, by measured leakage`,
    edition: "first editions",
    effectiveFrom: "2012-06-01",
    formula: "deemed-leakage-savings",
    constants: { airflowPerBtuPerH: 0.0123, blowerFraction: 0.0314, supplyShare: 0.5, returnShare: 0.5 },
    coincidenceFactor: SUMMER_PEAK_COINCIDENCE,
    cfm25PerCfm50Factor: 0.64,
    rounding: wholeNumbers,
    source: { sourceId: "il-trm", locator: "method 1, first editions" },
    note: remembered,
  },
  {
    id: "il-trm-method-1-later",
    title: `${title}, by measured leakage`,
    edition: "later editions",
    effectiveFrom: null,
    formula: "deemed-leakage-savings",
    constants: { airflowPerBtuPerH: 0.0136, blowerFraction: 0.0314, supplyShare: 0.5, returnShare: 0.5 },
    coincidenceFactor: SUMMER_PEAK_COINCIDENCE,
    cfm25PerCfm50Factor: 0.64,
    rounding: wholeNumbers,
    source: { sourceId: "il-trm", locator: "method 1, later editions" },
    note: remembered,
  },
  {
    id: "il-trm-efficiency",
    title: `${title}, by distribution efficiency`,
    edition: "first editions",
    effectiveFrom: "2012-06-01",
    formula: "deemed-efficiency-savings",
    constants: { blowerFraction: 0.0314 },
    coincidenceFactor: SUMMER_PEAK_COINCIDENCE,
    cfm25PerCfm50Factor: 0.64,
    rounding: wholeNumbers,
    source: { sourceId: "il-trm", locator: "by distribution efficiency" },
    note: remembered,
  },
];

/** @throws InputProblem when no rule has the id. */
export function deemedRuleById(id: string): DeemedRule {
  const rule = DEEMED_RULES.find((each) => each.id === id);
  if (rule !== undefined) return rule;
  return refuse({
    field: "plan/deemedRuleId",
    detail: `No deemed rule is called ${JSON.stringify(id)}`,
    fix: `Use one of ${DEEMED_RULES.map((each) => each.id).join(", ")}.`,
  });
}

/** Savings with as many decimals as the rule reports. */
export function roundByRule(rule: DeemedRule, savings: DeemedSavings): DeemedSavings {
  const rounded = (name: keyof DeemedSavings) => {
    const scale = 10 ** rule.rounding[name];
    return Math.round(savings[name] * scale) / scale;
  };
  return {
    coolingKWh: rounded("coolingKWh"),
    heatingTherms: rounded("heatingTherms"),
    blowerKWh: rounded("blowerKWh"),
  };
}
