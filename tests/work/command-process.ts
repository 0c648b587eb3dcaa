import { type ChildProcess, spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";

const FOLDER = join(process.cwd(), ".build/tests/command-line");

/** Compiles the command line once per test file. */
export async function buildCommandLine(): Promise<void> {
  await build({
    entryPoints: ["lib/cli/ductmend.ts"],
    outdir: FOLDER,
    outExtension: { ".js": ".mjs" },
    bundle: true,
    splitting: true,
    platform: "node",
    format: "esm",
    packages: "external",
    jsx: "automatic",
    logLevel: "error",
  });
}

/** A command in a process of its own, which can be killed. */
export function startCommand(args: readonly string[], env: Record<string, string>): ChildProcess {
  return spawn(process.execPath, [join(FOLDER, "ductmend.mjs"), ...args], {
    env: { ...process.env, NODE_ENV: "production", ...env },
    stdio: "ignore",
  });
}

/** Resident memory of a process in MB, or 0 when it is gone. Linux only. */
export function residentMb(pid: number | undefined): number {
  try {
    const pages = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1];
    return Number(pages ?? 0) / 1024;
  } catch {
    return 0;
  }
}
