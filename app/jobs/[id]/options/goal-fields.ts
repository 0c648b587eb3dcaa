import type { Plan } from "#lib/job/plan.ts";

export type GoalFieldName = "confidenceProbability" | "budgetUsdCents" | "crewHours";

export interface GoalField {
  name: GoalFieldName;
  label: string;
  hint: string;
  unit: string;
  /** From what is typed to what the job holds. */
  scale: number;
  /** Said when what was typed cannot be used. */
  problem: string;
  /** The goal that cannot be had without it. */
  isNeededFor?: NonNullable<Plan["objective"]>;
}

export const GOAL_FIELDS: readonly GoalField[] = [
  {
    name: "confidenceProbability",
    label: "How sure to reach the target, in percent",
    hint: "The chance that the retest passes. 80 when nothing is said.",
    unit: "%",
    scale: 0.01,
    problem: "Enter a number from 50 to 99",
  },
  {
    name: "budgetUsdCents",
    label: "Budget, in dollars",
    hint: "No option costs more.",
    unit: "$",
    scale: 100,
    problem: "Enter dollars, up to 100,000, with whole cents",
  },
  {
    name: "crewHours",
    label: "Hours of the whole crew",
    hint: "No option takes longer.",
    unit: "h",
    scale: 1,
    problem: "Enter the hours, above 0 and up to 400",
    isNeededFor: "crew-hours",
  },
];

export const GOALS: readonly { value: NonNullable<Plan["objective"]>; label: string; hint: string }[] = [
  { value: "reach-target", label: "Reach the target at the least price", hint: "As surely as asked below." },
  {
    value: "most-value",
    label: "Get the most lifetime value",
    hint: "What the work saves over its life beyond its price, within the budget.",
  },
  { value: "crew-hours", label: "Seal the most in the hours there are", hint: "Needs the hours below." },
];

/** A value of the plan as it is typed. */
export function typedGoal(plan: Plan | undefined, { name, scale }: GoalField): string {
  const value = plan?.[name];
  return value === undefined ? "" : String(Number((value / scale).toPrecision(12)));
}
