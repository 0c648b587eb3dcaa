import { readdirSync, readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import { join } from "node:path";
import next from "next";
import { type ExampleJob, seedDemo } from "#lib/access/seed-demo.ts";
import { ERROR_TABLE } from "#lib/errors/error-table.ts";
import { toProblem } from "#lib/errors/problem-details.ts";
import { ENGINE_VERSION } from "#lib/estimate/engine-version.ts";
import { jobSchema } from "#lib/job/job-schema.ts";
import { openStore, type Store } from "#lib/store/open-store.ts";
import { closeSharedStore } from "#lib/store/shared-store.ts";
import { seedDemoClaim } from "#lib/work/claims/seed-claim.ts";

/** A page that is being made when we are told to stop gets this long. */
const LAST_ANSWERS_MS = 3_000;

/** The example jobs of this checkout. One that does not fit the schema is left out and named: a test holds them to it. */
function readExamples(): ExampleJob[] {
  const folder = join(process.cwd(), "lib/examples");
  const names = readdirSync(folder).filter((name) => name.endsWith(".json"));
  return names.sort().flatMap((name) => {
    const parsed = jobSchema.safeParse(JSON.parse(readFileSync(join(folder, name), "utf8")));
    if (!parsed.success) {
      process.stderr.write(
        `The example ${name} was left out: ${parsed.error.issues[0]?.message ?? "it does not fit"}\n`,
      );
      return [];
    }
    const document = parsed.data;
    const searchWords = `${document.house.label} ${document.house.zip ?? ""}`;
    return [{ key: name.replace(/\.json$/, ""), title: document.title, searchWords, document }];
  });
}

function listen(server: Server, host: string, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, host, resolve);
  });
}

/** Serves until a signal says stop; then answers what was asked, and lets the database go in order. */
async function serve({ isDev, host, port }: { isDev: boolean; host: string; port: number }): Promise<void> {
  const store = await openStore();
  const server = createServer();
  try {
    await seedDemo(store, readExamples(), ENGINE_VERSION);
    await seedDemoClaim(store);
    const app = next({ dev: isDev, dir: process.cwd(), hostname: host, port, httpServer: server });
    await app.prepare();
    const answer = app.getRequestHandler();
    server.on("request", (request, response) => void answer(request, response));
    await listen(server, host, port);
  } catch (error) {
    await store.close();
    throw error;
  }
  process.stderr.write(`Ductmend is at http://${host}:${port} (Ctrl-C stops it)\n`);
  await stopSignal();
  await stop(server, store);
}

function stopSignal(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const) process.once(signal, () => resolve());
  });
}

async function stop(server: Server, store: Store): Promise<void> {
  process.stderr.write("Stopping …\n");
  const closed = new Promise((resolve) => server.close(resolve));
  server.closeIdleConnections();
  const impatience = setTimeout(() => server.closeAllConnections(), LAST_ANSWERS_MS);
  await closed;
  clearTimeout(impatience);
  await closeSharedStore();
  await store.close();
}

const [mode = "", host = "", port = ""] = process.argv.slice(2);
try {
  await serve({ isDev: mode === "dev", host, port: Number(port) });
  process.exit(0);
} catch (thrown) {
  const isTaken = thrown instanceof Error && "code" in thrown && thrown.code === "EADDRINUSE";
  const { code, problem } = toProblem(thrown);
  if (code === "unexpected" && !isTaken) console.error(thrown);
  process.stderr.write(isTaken ? `Port ${port} was taken by another program a moment ago.\n` : `${problem.detail}\n`);
  process.exit(ERROR_TABLE[code].exitCode);
}
