import { parseArgs } from "node:util";
import { ERROR_TABLE } from "#lib/errors/error-table.ts";
import { parseJson } from "#lib/errors/parse-json.ts";
import { toProblem } from "#lib/errors/problem-details.ts";
import { METHODS } from "#lib/methods/catalogue.ts";
import { methodById, methodResultDocument, runCard } from "#lib/methods/run-method.ts";
import { sourceTitle } from "#lib/sources/source-title.ts";
import type { Command } from "../command.ts";
import { formatTable } from "../table.ts";
import { usageProblem } from "../usage-problem.ts";

function listMethods(isHuman: boolean): string {
  const rows = METHODS.map(({ id, title, sources }) => ({
    id,
    title,
    source: sources.map((source) => ({ ...source, title: sourceTitle(source.sourceId) })),
  }));
  if (!isHuman) return `${JSON.stringify(rows, null, 2)}\n`;
  return formatTable(
    ["Method", "Title", "Source"],
    rows.map((row) => [row.id, row.title, row.source.map((each) => each.title).join("; ")]),
  );
}

/** One calculation of the catalogue: JSON in, JSON out. */
export const calcCommand: Command = {
  name: "calc",
  usage: "calc METHOD [--ndjson] < input.json · calc --list [--human]",
  summary: "Runs one calculation of the catalogue.",
  examples: [
    "echo '{\"temperatureF\":68}' | npm run -s ductmend -- calc air-density",
    "npm run -s ductmend -- calc --list --human",
  ],
  async run(context) {
    const { values, positionals } = parseArgs({
      args: [...context.args],
      allowPositionals: true,
      options: { list: { type: "boolean" }, ndjson: { type: "boolean" }, human: { type: "boolean" } },
    });
    if (values.list) {
      context.out(listMethods(values.human === true));
      return 0;
    }
    const [id] = positionals;
    if (id === undefined || positionals.length > 1) throw usageProblem("Name one method, or ask for `calc --list`.");
    const card = methodById(id);
    const text = await context.readInput();
    if (!values.ndjson) {
      context.out(`${JSON.stringify(methodResultDocument(runCard(card, parseJson(text, "standard input"))))}\n`);
      return 0;
    }
    let exitCode = 0;
    for (const line of text.split(/\r?\n/)) {
      if (line.trim() === "") continue;
      try {
        context.out(`${JSON.stringify(methodResultDocument(runCard(card, parseJson(line, "this line"))))}\n`);
      } catch (thrown) {
        const { code, problem } = toProblem(thrown);
        context.out(`${JSON.stringify(problem)}\n`);
        exitCode = Math.max(exitCode, ERROR_TABLE[code].exitCode);
      }
    }
    return exitCode;
  },
};
