import { readdirSync, readFileSync } from "node:fs";
import type { Job } from "#lib/job/job-schema.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";

const FOLDER = new URL("../../lib/examples/", import.meta.url);

export const EXAMPLE_FILES: readonly string[] = readdirSync(FOLDER)
  .filter((name) => name.endsWith(".json"))
  .sort();

/** The document of an example job, fresh each time, so that a test may change it. */
export function exampleDocument(file: string): Record<string, unknown> {
  return JSON.parse(readFileSync(new URL(file, FOLDER), "utf8")) as Record<string, unknown>;
}

export const exampleJob = (file: string): Job => parseJob(exampleDocument(file));

export async function exampleWithReference(file: string) {
  const job = exampleJob(file);
  return { job, reference: await loadReferenceData(job) };
}
