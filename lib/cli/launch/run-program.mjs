import { spawn } from "node:child_process";

/** A stop in words for people; the launcher prints it without a stack and leaves with the exit code. */
export class LaunchProblem extends Error {
  /**
   * @param {string} message
   * @param {number} exitCode
   */
  constructor(message, exitCode = 3) {
    super(message);
    this.name = "LaunchProblem";
    this.exitCode = exitCode;
  }
}

/**
 * Runs a program to its end and returns its exit code. With `isPreparation` its output goes to stderr, so that stdout
 * stays free for data. Stop signals are handed on.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {{ cwd: string, env?: NodeJS.ProcessEnv, isPreparation?: boolean }} options
 * @returns {Promise<number>}
 */
export function runProgram(command, args, { cwd, env = process.env, isPreparation = false }) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd, env, stdio: isPreparation ? ["ignore", 2, 2] : "inherit" });
    const handOn = (/** @type {NodeJS.Signals} */ signal) => child.kill(signal);
    // A terminal sends Ctrl-C to the whole group, the child included: here it only must not end us before the child.
    const ignore = () => {};
    process.on("SIGTERM", handOn).on("SIGINT", ignore);
    const forget = () => process.off("SIGTERM", handOn).off("SIGINT", ignore);
    child.once("error", (error) => {
      forget();
      reject(error);
    });
    child.once("exit", (code, signal) => {
      forget();
      resolve(code ?? (signal === "SIGINT" ? 130 : 143));
    });
  });
}

/**
 * Runs one step of the preparation, and stops with clear words when it fails.
 * @param {string} what
 * @param {string} command
 * @param {readonly string[]} args
 * @param {{ cwd: string, env?: NodeJS.ProcessEnv }} options
 */
export async function runStep(what, command, args, options) {
  process.stderr.write(`${what} …\n`);
  const code = await runProgram(command, args, { ...options, isPreparation: true });
  if (code !== 0) throw new LaunchProblem(`${what} failed (exit ${code}); its messages stand above.`);
}
