import { createReadStream } from "node:fs";
import path from "node:path";
import { createInterface } from "node:readline";
import { InputProblem } from "#lib/errors/input-problem.ts";
import type { CommandContext } from "./command.ts";

/** A line of a file with its number, from 1. */
export interface NumberedLine {
  line: number;
  text: string;
}

/**
 * The lines of a file, or of standard input when the path is “-”, in constant memory. Empty ones are passed over.
 * @throws InputProblem `file-unreadable` in plain words.
 */
export async function* readLines(file: string, context: CommandContext): AsyncGenerator<NumberedLine> {
  const full = path.resolve(context.workingFolder, file);
  const input = file === "-" ? process.stdin : createReadStream(full, { encoding: "utf8" });
  let line = 0;
  try {
    for await (const text of createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY })) {
      line++;
      if (text.trim() !== "") yield { line, text };
    }
  } catch (thrown) {
    if (!(thrown instanceof Error && "code" in thrown && "syscall" in thrown)) throw thrown;
    const detail = `${thrown.code === "ENOENT" ? "There is no such file" : "The file cannot be read"}: ${full}`;
    const fix = "Check the path and the permissions.";
    throw new InputProblem("file-unreadable", [{ pointer: "#", detail, code: "file-unreadable", fix }]);
  }
}
