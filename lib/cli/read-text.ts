import { readFile } from "node:fs/promises";
import path from "node:path";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { parseJson } from "#lib/errors/parse-json.ts";
import type { CommandContext } from "./command.ts";

/**
 * The text of a file, or of standard input when the path is “-”.
 * @throws InputProblem `file-unreadable` in plain words.
 */
export async function readText(file: string, context: CommandContext): Promise<string> {
  if (file === "-") return context.readInput();
  const full = path.resolve(context.workingFolder, file);
  try {
    return await readFile(full, "utf8");
  } catch (thrown) {
    const reason =
      (thrown as NodeJS.ErrnoException).code === "ENOENT" ? "There is no such file" : "The file cannot be read";
    throw new InputProblem("file-unreadable", [
      {
        pointer: "#",
        detail: `${reason}: ${full}`,
        code: "file-unreadable",
        fix: "Check the path and the permissions.",
      },
    ]);
  }
}

/** The same as JSON. @throws InputProblem `input-not-json` with line and column. */
export async function readJson(file: string, context: CommandContext): Promise<unknown> {
  return parseJson(await readText(file, context), file === "-" ? "standard input" : file);
}
