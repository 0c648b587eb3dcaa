import { notFound, redirect } from "next/navigation";
import { parseJob } from "#lib/job/parse-job.ts";
import { showAs } from "../session.ts";

/** A job opens where it was left: on its result, or at the beginning of the trip. */
export default async function JobPage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params;
  const { revision } = await showAs("job.view", ({ jobs }) => jobs.findCurrent(id));
  if (!revision) notFound();
  redirect(`/jobs/${id}/${isComplete(revision.document) ? "result" : "house"}`);
}

function isComplete(document: unknown): boolean {
  try {
    return parseJob(document).tests.length > 0;
  } catch {
    return false;
  }
}
