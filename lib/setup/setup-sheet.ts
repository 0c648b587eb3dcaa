import type { ValidityNote } from "#lib/errors/validity-note.ts";
import type { Citation } from "#lib/sources/source.ts";
import type { Pascals } from "#lib/units/quantity.ts";
import { type HoseDrawing, hoseDrawing } from "./hose-drawing.ts";
import { type CoverComparison, compareCovers } from "./register-cover.ts";
import { planRestrictor, type RestrictorPlan } from "./restrictor-plan.ts";
import { CONNECT_RULES } from "./rules/connect.ts";
import { PREPARE_RULES } from "./rules/prepare.ts";
import { type RuleContext, SETUP_PHASES, type SetupPhase } from "./rules/rule.ts";
import { RUN_RULES } from "./rules/run.ts";
import type { SetupAnswers } from "./setup-answers.ts";
import { setupWarnings } from "./setup-warnings.ts";
import { TEST_TRAITS } from "./test-traits.ts";

export interface SetupStep {
  id: string;
  phase: SetupPhase;
  step: string;
  why: string;
  /** Source `practice`, or the standard whose form it follows. */
  basis: Citation;
}

/** All that a person needs to set up one test: what to do in order, where each hose goes, what to expect. */
export interface SetupSheet {
  title: string;
  purpose: string;
  /** Size of the pressure to hold; its sign stands with each channel. */
  targetPressurePa: Pascals;
  steps: readonly SetupStep[];
  drawing: HoseDrawing;
  /** Absent without a fan, or without a flow to expect. */
  restrictorPlan?: RestrictorPlan;
  /** Absent when nothing is covered. */
  covers?: CoverComparison;
  warnings: readonly ValidityNote[];
}

const RULES = [...PREPARE_RULES, ...CONNECT_RULES, ...RUN_RULES];

/**
 * The set-up sheet of a test from a few answers: checklist, drawing, flow restrictor, warnings.
 * Each step says whether it is practice or a standard's form. Valid for every kind of `SETUP_TEST_KINDS`.
 * Source: practice, and forms of astm-e1554 and resnet-icc-380 where a step says so.
 */
export function setupSheet(answers: SetupAnswers): SetupSheet {
  const traits = TEST_TRAITS[answers.testKind];
  const context: RuleContext = { ...answers, traits };
  const steps = RULES.filter(({ applies }) => applies(context))
    .map(({ id, phase, step, why, basis }) => ({ id, phase, step: step(context), why: why(context), basis }))
    .sort((a, b) => SETUP_PHASES.indexOf(a.phase) - SETUP_PHASES.indexOf(b.phase));
  const { fan, direction, expectedLeakageCfm } = answers;
  const restrictorPlan =
    traits.usesDuctFan && fan && expectedLeakageCfm !== undefined
      ? planRestrictor({ fan, direction, expectedFlowCfm: expectedLeakageCfm })
      : undefined;
  const covers = traits.sealsRegisters ? compareCovers(answers) : undefined;
  return {
    title: traits.title,
    purpose: traits.purpose,
    targetPressurePa: answers.targetPressurePa ?? traits.usualTargetPa,
    steps,
    drawing: hoseDrawing(answers),
    restrictorPlan,
    covers,
    warnings: setupWarnings({ answers, covers, restrictorPlan }),
  };
}
