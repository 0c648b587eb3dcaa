import { readEpw } from "./epw.ts";
import { type TextChunks, textLines } from "./text-lines.ts";
import { readTmy3Csv } from "./tmy3-csv.ts";
import type { WeatherFile } from "./weather/collect-year.ts";
import { weatherProblem } from "./weather/weather-problem.ts";

/**
 * Reads a weather file of either kind, EPW or TMY3, as its text arrives: in a browser
 * `file.stream().pipeThrough(new TextDecoderStream())`, on the server a read stream with an encoding.
 * @throws InputProblem that names the line and what to do.
 */
export async function readWeatherFile(chunks: TextChunks): Promise<WeatherFile> {
  const lines = textLines(chunks, ({ number }) =>
    weatherProblem({
      lineNumber: number,
      detail: "The line is too long for a weather file",
      fix: "Choose a text file with one line an hour, EPW or TMY3.",
    }),
  );
  const { value: first, done } = await lines.next();
  if (done) throw weatherProblem({ detail: "The file is empty", fix: "Choose an EPW or TMY3 file." });
  if (/^LOCATION\s*,/i.test(first.text)) return readEpw(first, lines);
  if (/^"?\d{5,7}"?\s*,/.test(first.text)) return readTmy3Csv(first, lines);
  throw weatherProblem({
    lineNumber: first.number,
    detail: `The file begins neither like an EPW file nor like a TMY3 file: “${first.text.slice(0, 40)}”`,
    fix: "An EPW file begins with LOCATION, a TMY3 file with the number of the station.",
  });
}
