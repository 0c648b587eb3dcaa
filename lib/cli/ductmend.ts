import { text } from "node:stream/consumers";
import { ERROR_TABLE } from "#lib/errors/error-table.ts";
import { nearestName } from "#lib/errors/nearest-name.ts";
import { toProblem } from "#lib/errors/problem-details.ts";
import type { Command } from "./command.ts";
import { usageProblem } from "./usage-problem.ts";

/** Loaded on demand, so that a small calculation does not wait for the documents. */
const COMMANDS: Readonly<Record<string, () => Promise<Command>>> = {
  estimate: async () => (await import("./commands/estimate.ts")).estimateCommand,
  calc: async () => (await import("./commands/calc.ts")).calcCommand,
  schema: async () => (await import("./commands/schema.ts")).schemaCommand,
  claim: async () => (await import("./commands/claim.ts")).claimCommand,
  recompute: async () => (await import("./commands/recompute.ts")).recomputeCommand,
  "import-claims": async () => (await import("./commands/import-claims.ts")).importClaimsCommand,
  worker: async () => (await import("./commands/worker.ts")).workerCommand,
  convert: async () => (await import("./commands/convert.ts")).convertCommand,
};

async function helpText(): Promise<string> {
  const commands = await Promise.all(Object.values(COMMANDS).map((load) => load()));
  const examples = commands.flatMap((command) => command.examples).map((example) => `  ${example}`);
  const usage = commands.map((command) => `  ${command.usage}\n      ${command.summary}`);
  return [
    "Examples:",
    ...examples,
    "",
    "Commands (npm run -s ductmend -- …):",
    ...usage,
    "",
    "Data goes to standard output, messages to standard error. Exit: 0 good, 1 a claim differs or is invalid, 2 unusable command or file, 3 could not run.",
    "",
  ].join("\n");
}

async function main(args: readonly string[]): Promise<number> {
  const [name, ...rest] = args;
  if (name === undefined || name === "--help" || name === "help" || rest.includes("--help")) {
    process.stdout.write(await helpText());
    return name === undefined ? 2 : 0;
  }
  const load = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (!load) {
    const meant = nearestName(name, Object.keys(COMMANDS));
    throw usageProblem(`There is no command “${name}”.${meant ? ` Did you mean “${meant}”?` : ""}`);
  }
  const command = await load();
  return command.run({
    args: rest,
    workingFolder: process.env.INIT_CWD ?? process.cwd(),
    readInput: () => text(process.stdin),
    out: (chunk) => process.stdout.write(chunk),
    say: (chunk) => process.stderr.write(chunk),
  });
}

try {
  process.exitCode = await main(process.argv.slice(2));
} catch (thrown) {
  const isParseError =
    thrown instanceof TypeError && "code" in thrown && String(thrown.code).startsWith("ERR_PARSE_ARGS");
  const { code, problem } = toProblem(isParseError ? usageProblem(thrown.message) : thrown);
  if (code === "unexpected" && process.env.DUCTMEND_DEBUG) console.error(thrown);
  process.stderr.write(`${JSON.stringify(problem, null, 2)}\n`);
  process.exitCode = ERROR_TABLE[code].exitCode;
}
