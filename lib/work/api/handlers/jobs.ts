import { requireAllowed } from "#lib/access/can.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { createJob, getJob, listJobs, saveJob } from "#lib/exchange/api/operations/jobs.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import type { JobRecord } from "#lib/store/repositories/jobs.ts";
import type { Scope } from "#lib/store/scope.ts";
import { type Served, served } from "../served.ts";

const recordOf = ({ id, title, state, currentRevision, createdAt, updatedAt }: JobRecord) => ({
  id,
  title,
  state,
  currentRevision,
  createdAt: createdAt.toISOString(),
  updatedAt: updatedAt.toISOString(),
});

async function stored({ jobs }: Scope, id: string) {
  const { job, revision } = await jobs.findCurrent(id);
  return { ...recordOf(job), document: revision?.document ?? null };
}

/** Jobs of the contractor whose key asks. */
export const JOBS: readonly Served[] = [
  served(listJobs, async ({ store, actor }, { query }) => {
    requireAllowed(actor, "job.view");
    const page = await store.withOrganization(actor, ({ jobs }) => jobs.list(query));
    return { ...page, items: page.items.map(recordOf) };
  }),

  served(createJob, async ({ store, actor }, { body: { title, job } }) => {
    requireAllowed(actor, "job.create");
    const document = parseJob(job);
    return await store.withOrganization(actor, async (scope) => {
      const { id } = await scope.jobs.create({ title, searchWords: document.house.label });
      await scope.jobs.saveRevision({ jobId: id, onRevision: 0, document, engineVersion: ENGINE_VERSION });
      return await stored(scope, id);
    });
  }),

  served(getJob, async ({ store, actor }, { path }) => {
    requireAllowed(actor, "job.view");
    return await store.withOrganization(actor, (scope) => stored(scope, path.jobId ?? ""));
  }),

  served(saveJob, async ({ store, actor }, { path, body: { onRevision, job } }) => {
    requireAllowed(actor, "job.edit");
    const document = parseJob(job);
    const jobId = path.jobId ?? "";
    return await store.withOrganization(actor, async (scope) => {
      await scope.jobs.saveRevision({ jobId, onRevision, document, engineVersion: ENGINE_VERSION });
      return await stored(scope, jobId);
    });
  }),
];
