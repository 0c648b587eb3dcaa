import { z } from "zod";
import { shortTextSchema } from "#lib/job/identity.ts";
import { jobSchema } from "#lib/job/job-schema.ts";
import { numberField } from "#lib/units/field.ts";
import { operation } from "../api-operation.ts";
import { instantSchema, pageOf, pageQuery, rowIdSchema } from "../list-schemas.ts";

const JOB_STATES = ["draft", "proposed", "accepted", "declined", "sealed", "verified", "closed"] as const;

const revision = numberField({ unit: "count", title: "Revision", min: 0, isInteger: true });

const jobRecordSchema = z
  .strictObject({
    id: rowIdSchema,
    title: z.string(),
    state: z.enum(JOB_STATES),
    currentRevision: revision,
    createdAt: instantSchema,
    updatedAt: instantSchema,
  })
  .meta({ id: "JobRecord", title: "A stored job" });

const storedJobSchema = jobRecordSchema
  .extend({ document: z.unknown().meta({ title: "The job document of the newest revision, as it was saved" }) })
  .meta({ id: "StoredJob", title: "A stored job with its document" });

export const listJobs = operation({
  operationId: "listJobs",
  method: "GET",
  path: "/jobs",
  group: "Jobs",
  title: "Jobs of the organization",
  description: "The newest first, page by page.",
  scope: "jobs:read",
  query: z.strictObject({
    ...pageQuery,
    search: shortTextSchema.optional().meta({ title: "Words of title or address" }),
    state: z.enum(JOB_STATES).optional().meta({ title: "State" }),
  }),
  answer: pageOf(jobRecordSchema),
  status: 200,
  example: { query: { limit: "2" } },
});

export const createJob = operation({
  operationId: "createJob",
  method: "POST",
  path: "/jobs",
  group: "Jobs",
  title: "A new job",
  description: "Stores a job document as the first revision of a new job.",
  scope: "jobs:write",
  body: z.strictObject({ title: shortTextSchema, job: jobSchema }).meta({ id: "NewJob", title: "A job to store" }),
  answer: storedJobSchema,
  status: 201,
  example: { body: { title: "Inside ducts (invented)", job: "{job:inside-ducts-furnace}" } },
});

export const getJob = operation({
  operationId: "getJob",
  method: "GET",
  path: "/jobs/{jobId}",
  group: "Jobs",
  title: "One job",
  description: "With the document of its newest revision.",
  scope: "jobs:read",
  answer: storedJobSchema,
  status: 200,
  example: { path: { jobId: "{jobId}" } },
});

export const saveJob = operation({
  operationId: "saveJob",
  method: "PUT",
  path: "/jobs/{jobId}",
  group: "Jobs",
  title: "A new revision of a job",
  description:
    "Revisions are only added, never changed. `onRevision` is the one that the change was made on; when somebody saved another one meanwhile, the answer is a conflict.",
  scope: "jobs:write",
  body: z
    .strictObject({ onRevision: revision, job: jobSchema })
    .meta({ id: "NewRevision", title: "A revision to add" }),
  answer: storedJobSchema,
  status: 200,
  example: { path: { jobId: "{jobId}" }, body: { onRevision: 1, job: "{job:inside-ducts-furnace}" } },
});
