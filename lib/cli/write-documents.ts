import { mkdir, rename, writeFile } from "node:fs/promises";
import path from "node:path";
import { renderJobDocuments } from "#lib/documents/render-job-documents.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import type { CommandContext } from "./command.ts";

/**
 * Writes the documents of a result into a folder, each whole or not at all. They carry the date of the last visit,
 * so that the same job gives the same bytes; a job without one carries today's.
 * @throws InputProblem `file-unwritable` in plain words.
 */
export async function writeDocuments({
  job,
  result,
  folder,
  context,
}: {
  job: Job;
  result: Result;
  folder: string;
  context: CommandContext;
}): Promise<string[]> {
  const target = path.resolve(context.workingFolder, folder);
  const days = [job.date, ...job.tests.map(({ date }) => date)].flatMap((date) => date ?? []).sort();
  const isoDate = days.at(-1) ?? new Date().toISOString().slice(0, 10);
  const documents = await renderJobDocuments({ job, result, language: "en", isoDate });
  const written: string[] = [];
  for (const { kind, bytes } of documents) {
    const file = path.join(target, `${job.id}-${kind}.pdf`);
    try {
      await mkdir(target, { recursive: true });
      const draft = `${file}.part`;
      await writeFile(draft, bytes);
      await rename(draft, file);
    } catch (thrown) {
      throw new InputProblem("file-unwritable", [
        {
          pointer: "#",
          detail: `Could not write ${file}: ${(thrown as NodeJS.ErrnoException).code ?? "unknown reason"}`,
          code: "file-unwritable",
          fix: "Name a folder that you may write into.",
        },
      ]);
    }
    written.push(file);
  }
  return written;
}
