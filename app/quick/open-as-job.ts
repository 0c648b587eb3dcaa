"use server";

import { redirect } from "next/navigation";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { actAs } from "../jobs/session.ts";
import { textAt } from "../jobs/trip/draft.ts";
import { plainDraft } from "../jobs/trip/plain-draft.ts";

/** Keeps a quick look as a job and goes on with it where it is: on the trip. */
export async function openAsJob(received: unknown): Promise<never> {
  const document = plainDraft(received);
  const title = (textAt(document, "title") ?? "Quick look").slice(0, 200);
  const id = await actAs("job.create", async ({ jobs }) => {
    const job = await jobs.create({ title, searchWords: textAt(document, "house/zip") ?? "" });
    await jobs.saveRevision({
      jobId: job.id,
      onRevision: 0,
      document: { ...document, title },
      engineVersion: ENGINE_VERSION,
    });
    return job.id;
  });
  redirect(`/jobs/${id}/house`);
}
