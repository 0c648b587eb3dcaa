import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";

export interface AppServer {
  url: string;
  stop(): Promise<void>;
}

const MOST_WAIT_MS = 60_000;

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === "object" && address ? address.port : 0));
    });
  });
}

async function untilItAnswers(url: string, server: ChildProcess, log: readonly string[]): Promise<void> {
  const end = Date.now() + MOST_WAIT_MS;
  while (Date.now() < end) {
    if (server.exitCode !== null) break;
    const response = await fetch(`${url}/jobs`).catch(() => null);
    if (response?.ok) return;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  throw new Error(`The app did not answer: ${log.join("").slice(-2000)}`);
}

/** The built app with a database of its own in the temp folder. `npm test` builds what it needs. */
export async function startApp(): Promise<AppServer> {
  const stateFolder = mkdtempSync(join(tmpdir(), "ductmend-browser-"));
  const port = await freePort();
  const url = `http://127.0.0.1:${port}`;
  const server = spawn(process.execPath, [".build/cli/serve.mjs", "start", "127.0.0.1", String(port)], {
    env: { ...process.env, NODE_ENV: "production", DUCTMEND_STATE_FOLDER: stateFolder, DATABASE_URL: "" },
    stdio: ["ignore", "pipe", "pipe"],
  });
  const log: string[] = [];
  server.stdout.on("data", (chunk: Buffer) => log.push(chunk.toString()));
  server.stderr.on("data", (chunk: Buffer) => log.push(chunk.toString()));
  await untilItAnswers(url, server, log);
  return {
    url,
    async stop() {
      const gone = new Promise((resolve) => server.once("exit", resolve));
      server.kill("SIGTERM");
      await gone;
      rmSync(stateFolder, { recursive: true, force: true });
    },
  };
}
