"use server";

import { redirect } from "next/navigation";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { readJobRows } from "#lib/exchange/csv/read-job-rows.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { documentOfRows, type JobStart } from "./document-of-rows.ts";
import { newJobDocument } from "./new-job-document.ts";
import { ownInstruments } from "./own-instruments.ts";
import { actAs } from "./session.ts";

export interface FormProblem {
  errors: readonly { fieldId: string; text: string }[];
}

const text = (form: FormData, name: string): string => {
  const value = form.get(name);
  return typeof value === "string" ? value.trim() : "";
};

const today = (): string => new Date().toLocaleDateString("en-CA");

/** Starts a job with the name of its house; everything else is asked on the trip. */
export async function createJob(_before: FormProblem | null, form: FormData): Promise<FormProblem> {
  const label = text(form, "label");
  const zip = text(form, "zip");
  const errors = [
    ...(label === "" ? [{ fieldId: "label", text: "Enter a name for the house" }] : []),
    ...(zip !== "" && !/^\d{5}$/.test(zip) ? [{ fieldId: "zip", text: "Enter the five digits of the ZIP code" }] : []),
  ];
  if (errors.length > 0) return { errors };
  const id = await actAs("job.create", async (scope) => {
    const { jobs } = scope;
    const instruments = await ownInstruments(scope);
    const document = newJobDocument({ label: label.slice(0, 200), zip, date: today(), instruments });
    const job = await jobs.create({ title: document.title, searchWords: zip });
    await jobs.saveRevision({ jobId: job.id, onRevision: 0, document, engineVersion: ENGINE_VERSION });
    return job.id;
  });
  redirect(`/jobs/${id}/house`);
}

export async function duplicateJob(form: FormData): Promise<void> {
  const id = await actAs("job.create", async ({ jobs }) => {
    const { title } = await jobs.find(text(form, "jobId"));
    return (await jobs.duplicate(text(form, "jobId"), `${title}, copy`.slice(0, 200))).id;
  });
  redirect(`/jobs/${id}/house`);
}

const LARGEST_FILE_BYTES = 2_000_000;

/** Takes in a job file as it was written by hand, by another program, or exported here; or the rows of a spreadsheet. */
export async function importJob(_before: FormProblem | null, form: FormData): Promise<FormProblem> {
  const file = form.get("file");
  const wrong = (words: string): FormProblem => ({ errors: [{ fieldId: "file", text: words }] });
  if (!(file instanceof File) || file.size === 0) return wrong("Choose a job file or a spreadsheet");
  if (file.size > LARGEST_FILE_BYTES) return wrong("Choose a file smaller than 2 MB");
  const read = readDocument(await file.text(), file.name.toLowerCase().endsWith(".json"));
  if ("errors" in read) return read;
  const { document } = read;
  const id = await actAs("job.create", async ({ jobs }) => {
    const searchWords = `${document.house.label} ${document.house.zip ?? ""}`;
    const job = await jobs.create({ title: document.title, searchWords });
    await jobs.saveRevision({ jobId: job.id, onRevision: 0, document, engineVersion: ENGINE_VERSION });
    return job.id;
  });
  redirect(`/jobs/${id}/house`);
}

function readDocument(content: string, isNamedJson: boolean): { document: JobStart } | FormProblem {
  const isJson = isNamedJson || content.trimStart().startsWith("{");
  try {
    if (!isJson) return { document: documentOfRows({ rows: readJobRows(content), date: today() }) };
    return { document: parseJob(JSON.parse(content)) };
  } catch (thrown) {
    if (thrown instanceof InputProblem) {
      return {
        errors: thrown.errors.map((each) => ({
          fieldId: "file",
          text: `${isJson ? `${each.pointer}: ` : ""}${each.detail}. ${each.fix}`,
        })),
      };
    }
    if (!isJson) throw thrown;
    return { errors: [{ fieldId: "file", text: "The file is not JSON. Check for a missing comma, bracket or quote" }] };
  }
}
