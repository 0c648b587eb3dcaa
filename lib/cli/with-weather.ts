import { createReadStream } from "node:fs";
import path from "node:path";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { readWeatherFile } from "#lib/exchange/read-weather-file.ts";
import { packWeatherYear } from "#lib/exchange/weather/pack-weather-year.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { CommandContext } from "./command.ts";

/**
 * The job with the year of a weather file, EPW or TMY3, in the place of the station's; what had to be done to the file
 * is said on stderr. @throws InputProblem that names the line.
 */
export async function withWeather(job: Job, file: string, context: CommandContext): Promise<Job> {
  const full = path.resolve(context.workingFolder, file);
  const { climate, notes } = await readWeatherFile(createReadStream(full, { encoding: "utf8" })).catch(
    (thrown: unknown) => {
      if ((thrown as NodeJS.ErrnoException).code === undefined || thrown instanceof InputProblem) throw thrown;
      throw new InputProblem("file-unreadable", [
        {
          pointer: "#",
          detail: `The weather file cannot be read: ${full}`,
          code: "file-unreadable",
          fix: "Check the path and the permissions.",
        },
      ]);
    },
  );
  for (const note of notes) context.say(`${note.what} ${note.why}\n`);
  return { ...job, house: { ...job.house, weatherYear: packWeatherYear(climate) } };
}
