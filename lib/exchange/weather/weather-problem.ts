import { InputProblem } from "#lib/errors/input-problem.ts";

/** A weather file that cannot be used: where in the file, what is wrong, what to do. */
export function weatherProblem({
  lineNumber,
  detail,
  fix,
}: {
  lineNumber?: number;
  detail: string;
  fix: string;
}): InputProblem {
  return new InputProblem("input-unusable", [
    {
      pointer: "#/weatherFile",
      code: "weather-file",
      detail: lineNumber === undefined ? detail : `Line ${lineNumber}: ${detail}`,
      fix,
    },
  ]);
}
