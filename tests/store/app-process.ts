import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { join } from "node:path";
import { build } from "esbuild";

const BUNDLE = join(process.cwd(), ".build/tests/open-and-wait.mjs");

/** Compiles the little program once per test file. */
export async function buildAppProcess(): Promise<void> {
  await build({
    entryPoints: ["tests/store/open-and-wait.ts"],
    outfile: BUNDLE,
    bundle: true,
    platform: "node",
    format: "esm",
    packages: "external",
    logLevel: "error",
  });
}

/** Starts it and waits for its first word: "open", or the code of what went wrong. */
export async function startAppProcess(env: Record<string, string>): Promise<{ app: ChildProcess; word: string }> {
  const app = spawn(process.execPath, [BUNDLE], { env: { ...process.env, ...env }, stdio: ["ignore", "pipe", "pipe"] });
  const [chunk] = await once(app.stdout!, "data");
  return { app, word: String(chunk).trim() };
}

export async function end(app: ChildProcess, signal: NodeJS.Signals): Promise<void> {
  if (app.exitCode !== null || app.signalCode !== null) return;
  app.kill(signal);
  await once(app, "exit");
}
