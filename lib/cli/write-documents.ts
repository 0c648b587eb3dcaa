import { mkdir, rename, writeFile } from "node:fs/promises";
import path from "node:path";
import { renderProposalPdf } from "#lib/documents/render-proposal-pdf.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import type { CommandContext } from "./command.ts";

/**
 * Writes the documents of a result into a folder, each whole or not at all.
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
  const file = path.join(target, `${job.id}-proposal.pdf`);
  const isoDate = job.date ?? new Date().toISOString().slice(0, 10);
  const bytes = await renderProposalPdf({ job, result, language: "en", isoDate });
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
  return [file];
}
