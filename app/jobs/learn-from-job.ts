import "server-only";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import type { SealingRetest } from "#lib/scope/learning.ts";
import { STARTING_CATALOGUE } from "#lib/scope/repairs.ts";
import { retestLesson } from "#lib/scope/retest-lesson.ts";
import { actAs } from "./session.ts";

/** Enough for the doubt of a lesson, which need not be known to a figure. */
const LESSON_DRAWS = 2000;

/** Takes in what a job's retest says of the repairs that were done, or drops what it said before. */
export async function learnFromJob(jobId: string): Promise<void> {
  const { revision } = await actAs("job.edit", ({ jobs }) => jobs.findCurrent(jobId));
  if (!revision) return;
  const lesson = await lessonOf(revision.document);
  await actAs("job.edit", ({ repairs }) =>
    lesson ? repairs.noteExperience(jobId, revision.revision, lesson) : repairs.dropExperience(jobId),
  );
}

async function lessonOf(document: unknown): Promise<SealingRetest | null> {
  try {
    const job = parseJob(document);
    const isDone = job.plan?.chosenMeasures && job.tests.some(({ stage }) => stage === "retest" || stage === "final");
    if (!isDone) return null;
    const result = await estimate(job, await loadReferenceData(job), { draws: LESSON_DRAWS });
    return retestLesson({ job, result, catalogue: STARTING_CATALOGUE });
  } catch (thrown) {
    if (thrown instanceof InputProblem) return null;
    throw thrown;
  }
}
