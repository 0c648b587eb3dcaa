/**
 * The one door from a clean clone to a running program: `node lib/cli/launch.mjs COMMAND …`. It imports nothing outside
 * Node, installs, generates and builds what is out of date, and then runs the command. What the preparation has to say
 * goes to stderr; stdout belongs to the command.
 */
import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { listeningAddress, refuseTakenPort } from "./launch/loopback.mjs";
import { prepare } from "./launch/prepare.mjs";
import { LaunchProblem, runProgram } from "./launch/run-program.mjs";
import { noteServer } from "./launch/running-servers.mjs";

const root = join(dirname(fileURLToPath(import.meta.url)), "../..");

/** @type {Record<string, (args: string[]) => Promise<number>>} */
const COMMANDS = {
  start: async () => {
    const address = listeningAddress(process.env);
    await refuseTakenPort(root, address);
    await prepare(root, ["install", "generateClient", "bundle", "buildWeb"]);
    noteServer(root, `http://${address.host}:${address.port}`);
    return runBundled("serve", ["start", address.host, String(address.port)]);
  },
  dev: async () => {
    const address = listeningAddress(process.env);
    await refuseTakenPort(root, address);
    await prepare(root, ["install", "generateClient", "bundle"]);
    return runBundled("serve", ["dev", address.host, String(address.port)]);
  },
  test: async (args) => {
    await prepare(root, ["install", "generateClient", "bundle", "buildWeb"]);
    return runNode(["node_modules/vitest/vitest.mjs", "run", ...args], { NODE_ENV: "test" });
  },
  check: async () => {
    await prepare(root, ["install", "generateClient"]);
    const checks = [
      ["node_modules/@biomejs/biome/bin/biome", "check"],
      ["node_modules/next/dist/bin/next", "typegen"],
      ["node_modules/typescript/bin/tsc", "--noEmit"],
      ["node_modules/knip/bin/knip.js"],
      ["node_modules/vitest/vitest.mjs", "run", "--passWithNoTests", "tests/architecture"],
    ];
    for (const command of checks) {
      process.stderr.write(`${command.join(" ")}\n`);
      const code = await runNode(command);
      if (code !== 0) return code;
    }
    return 0;
  },
  ductmend: async (args) => {
    await prepare(root, ["install", "generateClient", "bundle"]);
    return runBundled("ductmend", args);
  },
  bench: async (args) => {
    await prepare(root, ["install", "generateClient", "bundle", "buildWeb"]);
    return runBundled("bench", args);
  },
  prove: async (args) => {
    await prepare(root, ["install", "generateClient", "bundle", "buildWeb"]);
    const config = ["--config", "vitest.proofs.config.ts"];
    return runNode(["node_modules/vitest/vitest.mjs", "run", ...config, ...args], { NODE_ENV: "test" });
  },
};

/**
 * Runs a bundled program in this very process. It finds its arguments in process.argv and sets process.exitCode.
 * @param {string} name
 * @param {string[]} args
 */
async function runBundled(name, args) {
  const file = join(root, `.build/cli/${name}.mjs`);
  if (!existsSync(file)) throw new LaunchProblem(`There is no ${name} in this version.`, 2);
  process.argv = [process.execPath, file, ...args];
  if (!process.env.NODE_ENV) Object.assign(process.env, { NODE_ENV: "production" });
  await import(pathToFileURL(file).href);
  return Number(process.exitCode ?? 0);
}

/**
 * @param {string[]} args
 * @param {Record<string, string>} [extraEnv]
 */
function runNode(args, extraEnv = {}) {
  return runProgram(process.execPath, args, { cwd: root, env: { ...process.env, ...extraEnv } });
}

/** Paths that the user gives are relative to where the user stands; the programs themselves stand in the checkout. */
process.env.INIT_CWD ??= process.cwd();
process.chdir(root);

const [name = "", ...args] = process.argv.slice(2);
const command = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
try {
  if (!command) {
    throw new LaunchProblem(`Use one of: ${Object.keys(COMMANDS).join(", ")}. For example: npm start`, 2);
  }
  process.exitCode = await command(args);
} catch (error) {
  if (!(error instanceof LaunchProblem)) throw error;
  process.stderr.write(`${error.message}\n`);
  process.exitCode = error.exitCode;
}
