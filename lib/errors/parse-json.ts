import { InputProblem } from "./input-problem.ts";

/** A text as JSON. @throws InputProblem `input-not-json` that names the text, with line and column. */
export function parseJson(text: string, name: string): unknown {
  try {
    return JSON.parse(text);
  } catch (thrown) {
    const at = /position (\d+)/.exec((thrown as Error).message)?.[1];
    const before = at === undefined ? null : text.slice(0, Number(at)).split("\n");
    const where = before ? ` at line ${before.length}, column ${(before.at(-1)?.length ?? 0) + 1}` : "";
    throw new InputProblem("input-not-json", [
      {
        pointer: "#",
        detail: `${name} is not JSON${where}`,
        code: "not-json",
        fix: "Check for a missing comma, bracket or quote.",
      },
    ]);
  }
}
