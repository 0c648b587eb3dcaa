"use server";

import { redirect } from "next/navigation";
import { after } from "next/server";
import { readQuantity } from "#app/design/read-quantity.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { type Plan, planSchema } from "#lib/job/plan.ts";
import { keepInForce } from "../../job-in-force.ts";
import { learnFromJob } from "../../learn-from-job.ts";
import { actAs } from "../../session.ts";
import { GOAL_FIELDS, type GoalFieldName } from "./goal-fields.ts";

const textOf = (form: FormData, name: string): string => String(form.get(name) ?? "").trim();

async function changePlan(jobId: string, change: (plan: Plan) => Plan): Promise<void> {
  await actAs("job.edit", (scope) =>
    keepInForce(scope, jobId, (job): Job => ({ ...job, plan: change({ ...job.plan }) })),
  );
  after(() => learnFromJob(jobId));
}

/** Takes the measures of an option, or of a point of the drawing, as the work of this job. */
export async function pickScope(form: FormData): Promise<void> {
  const jobId = textOf(form, "jobId");
  const measures = planSchema.shape.chosenMeasures.parse(JSON.parse(textOf(form, "measures")));
  await changePlan(jobId, ({ chosenOptionId: _, ...plan }) => ({ ...plan, chosenMeasures: measures }));
  redirect(`/jobs/${jobId}/options#chosen`);
}

/** Lets go of what was picked, so that the option which meets the goal is chosen again. */
export async function dropPick(form: FormData): Promise<void> {
  const jobId = textOf(form, "jobId");
  await changePlan(jobId, withoutPick);
  redirect(`/jobs/${jobId}/options`);
}

const withoutPick = ({ chosenOptionId: _, chosenMeasures: __, ...plan }: Plan): Plan => plan;

/** Sets what the options are for. What was picked for another goal is let go. */
export async function setGoal(form: FormData): Promise<void> {
  const jobId = textOf(form, "jobId");
  const objective = planSchema.shape.objective.parse(textOf(form, "objective"));
  const limits: Partial<Record<GoalFieldName, number>> = {};
  const wrong: string[] = [];
  for (const { name, scale, isNeededFor } of GOAL_FIELDS) {
    const typed = textOf(form, name);
    const number = typed === "" ? undefined : readQuantity(typed);
    const value = number === undefined ? undefined : Number((number * scale).toPrecision(12));
    const isMissing = typed === "" && objective === isNeededFor;
    if (isMissing || (typed !== "" && !planSchema.shape[name].safeParse(value).success)) wrong.push(name);
    else if (value !== undefined) limits[name] = value;
  }
  if (wrong.length > 0) {
    const typed = [...GOAL_FIELDS.map(({ name }) => name), "objective"].map((name) => [name, textOf(form, name)]);
    redirect(`/jobs/${jobId}/options?${new URLSearchParams([...typed, ["wrong", wrong.join(" ")]])}#goal`);
  }
  await changePlan(jobId, (plan) => {
    const { budgetUsdCents: _, crewHours: __, confidenceProbability: ___, ...rest } = withoutPick(plan);
    return { ...rest, ...(objective ? { objective } : {}), ...limits };
  });
  redirect(`/jobs/${jobId}/options`);
}
