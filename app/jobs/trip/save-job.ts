"use server";

import { after } from "next/server";
import { type FieldProblem, InputProblem } from "#lib/errors/input-problem.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { contentHash } from "#lib/hash/content-hash.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { learnFromJob } from "../learn-from-job.ts";
import { actAs } from "../session.ts";
import { type Draft, textAt } from "./draft.ts";
import { plainDraft } from "./plain-draft.ts";

export interface SaveReply {
  revision: number;
  /** What keeps the job from being answered; it is saved all the same. */
  problems: readonly FieldProblem[];
  /** Somebody else saved first: nothing was kept of this one. */
  conflict?: string;
}

/** Keeps the draft as a new revision, complete or not. An unchanged one makes no revision. */
export async function saveJob(request: { jobId: string; onRevision: number; draft: Draft }): Promise<SaveReply> {
  const { jobId, onRevision } = request;
  const draft = plainDraft(request.draft);
  const title = (textAt(draft, "title") ?? "Job without a name").slice(0, 200);
  const document = { ...draft, title };
  const problems = problemsOf(document);
  try {
    const revision = await actAs("job.edit", async ({ jobs }) => {
      const { job, revision: current } = await jobs.findCurrent(jobId);
      if (job.currentRevision === onRevision && current?.contentHash === contentHash(document)) return onRevision;
      const saved = await jobs.saveRevision({ jobId, onRevision, document, engineVersion: ENGINE_VERSION });
      const searchWords = [textAt(draft, "house/label"), textAt(draft, "house/zip")].filter(Boolean).join(" ");
      await jobs.describe(jobId, { title, searchWords });
      return saved.revision;
    });
    if (revision !== onRevision) after(() => learnFromJob(jobId));
    return { revision, problems };
  } catch (thrown) {
    if (thrown instanceof InputProblem && thrown.code === "conflict") {
      return { revision: onRevision, problems, conflict: thrown.message };
    }
    throw thrown;
  }
}

function problemsOf(document: object): readonly FieldProblem[] {
  try {
    parseJob(document);
    return [];
  } catch (thrown) {
    if (thrown instanceof InputProblem) return thrown.errors;
    throw thrown;
  }
}

/** Makes an earlier revision the newest one; those between stay in the history. */
export async function restoreRevision(request: { jobId: string; onRevision: number; revision: number }): Promise<void> {
  const { jobId, onRevision, revision } = request;
  await actAs("job.edit", async ({ jobs }) => {
    const { document } = await jobs.findRevision(jobId, revision);
    await jobs.saveRevision({ jobId, onRevision, document: document as object, engineVersion: ENGINE_VERSION });
    await jobs.describe(jobId, { title: textAt(document as Draft, "title") ?? "Job" });
  });
  after(() => learnFromJob(jobId));
}
