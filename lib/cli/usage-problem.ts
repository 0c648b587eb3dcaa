import { InputProblem } from "#lib/errors/input-problem.ts";

/** A command line that cannot be understood. */
export function usageProblem(detail: string): InputProblem {
  return new InputProblem("command-unknown", [
    { pointer: "#", detail, code: "usage", fix: "Run `npm run -s ductmend -- --help`." },
  ]);
}
