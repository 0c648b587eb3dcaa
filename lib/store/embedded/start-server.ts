import { spawn } from "node:child_process";
import { chmodSync, chownSync, closeSync, existsSync, mkdirSync, openSync, readFileSync, statSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { type RunningServer, readRunningServer } from "./postmaster-file.ts";
import type { ServerAccount } from "./server-account.ts";
import { serverEnvironment } from "./server-environment.ts";
import { checkoutId } from "./state-folder.ts";

/** Recovery after a crash replays the log before the server is ready. */
const LONGEST_START_MS = 120_000;
const POLL_MS = 20;
const LOG_TAIL_LINES = 5;
/** Unix sockets: 107 bytes, less "/.s.PGSQL.5432". */
const LONGEST_SOCKET_FOLDER = 90;
const SOCKET_PORT = 5432;

/** Starts the server on a Unix socket (Windows: loopback) and waits until it answers. It outlives this process. */
export async function startServer({
  postgres,
  stateFolder,
  dataFolder,
  account,
}: {
  postgres: string;
  stateFolder: string;
  dataFolder: string;
  account: ServerAccount | undefined;
}): Promise<RunningServer> {
  const listening =
    process.platform === "win32"
      ? ["-c", "listen_addresses=127.0.0.1", "-p", String(await freePort())]
      : [
          "-c",
          "listen_addresses=",
          "-c",
          `unix_socket_directories=${socketFolder(stateFolder, account)}`,
          "-p",
          String(SOCKET_PORT),
        ];
  const logFile = join(stateFolder, "server.log");
  const log = openSync(logFile, "w", 0o600);
  const server = spawn(postgres, ["-D", dataFolder, ...listening, "-c", "timezone=UTC", "-c", "log_timezone=UTC"], {
    cwd: dataFolder,
    env: serverEnvironment(),
    stdio: ["ignore", log, log],
    // A group of its own: Ctrl-C in the terminal must not stop the database before the app has finished with it.
    detached: true,
    ...(account && { uid: account.uid, gid: account.gid }),
  });
  closeSync(log);
  let failure: string | undefined;
  const onError = (error: Error) => {
    failure = error.message;
  };
  const onExit = () => {
    failure = readFileSync(logFile, "utf8").trim().split("\n").slice(-LOG_TAIL_LINES).join("\n");
  };
  server.once("error", onError).once("exit", onExit);
  server.unref();
  for (let waitedMs = 0; waitedMs < LONGEST_START_MS; waitedMs += POLL_MS) {
    const running = readRunningServer(dataFolder);
    if (running && running.pid === server.pid) {
      server.off("exit", onExit);
      return running;
    }
    if (failure !== undefined) break;
    await wait(POLL_MS);
  }
  throw new InputProblem(
    "database-unusable",
    [],
    `The embedded database did not start in ${dataFolder}: ${failure ?? "it was not ready in time"}`,
  );
}

/** The socket's folder; in the temp folder where the state folder's own path is too long for a socket. */
function socketFolder(stateFolder: string, account: ServerAccount | undefined): string {
  const inside = join(stateFolder, "socket");
  const folder =
    Buffer.byteLength(inside) <= LONGEST_SOCKET_FOLDER ? inside : join(tmpdir(), `ductmend-${checkoutId(stateFolder)}`);
  if (!existsSync(folder)) mkdirSync(folder, { mode: 0o700 });
  const own = process.getuid?.();
  const owner = statSync(folder).uid;
  if (owner !== own && owner !== account?.uid) {
    throw new InputProblem("database-unusable", [], `${folder} belongs to somebody else. Remove it, then start again.`);
  }
  chmodSync(folder, 0o700);
  if (account) chownSync(folder, account.uid, account.gid);
  return folder;
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      probe.close(() =>
        address && typeof address === "object" ? resolve(address.port) : reject(new Error("no port")),
      );
    });
  });
}
