import { createServer } from "node:net";
import { LaunchProblem } from "./run-program.mjs";
import { otherServers } from "./running-servers.mjs";

const DEFAULT_PORT = 3000;
const LOOPBACK_NAMES = new Set(["", "localhost", "127.0.0.1", "::1", "[::1]"]);

/**
 * The address to listen on: this machine only, because there is no sign-in. HOST (and HOSTNAME, where it names an
 * address, as some hosts of web apps set it) may repeat that, and nothing else.
 * @param {Readonly<Record<string, string | undefined>>} env
 * @returns {{ host: "127.0.0.1", port: number }}
 */
export function listeningAddress(env) {
  for (const name of ["HOST", "HOSTNAME"]) {
    const value = (env[name] ?? "").trim().toLowerCase();
    // Shells export HOSTNAME as the machine's own name; only an address there is a wish to listen on it.
    const isWish = name === "HOST" || /^[0-9.]+$|:/.test(value);
    if (isWish && !LOOPBACK_NAMES.has(value)) {
      throw new LaunchProblem(
        `${name}=${env[name]} is refused: Ductmend has no sign-in yet, so it listens on this machine only (127.0.0.1). Unset ${name} and start again.`,
      );
    }
  }
  const text = env.PORT ?? "";
  const port = text === "" ? DEFAULT_PORT : Number(text);
  if (!(Number.isInteger(port) && port >= 1 && port <= 65535)) {
    throw new LaunchProblem(`PORT must be a whole number from 1 to 65535, not "${text}".`, 2);
  }
  return { host: "127.0.0.1", port };
}

/**
 * Stops with clear words when something already listens there.
 * @param {string} root
 * @param {{ host: string, port: number }} address
 */
export async function refuseTakenPort(root, { host, port }) {
  const code = await listenOnce(host, port);
  if (code === undefined) return;
  if (code === "EACCES")
    throw new LaunchProblem(`You may not listen on port ${port}. Choose one above 1023: PORT=3001 npm start`);
  const url = `http://${host}:${port}`;
  const own = otherServers(root).find((server) => server.url === url);
  throw new LaunchProblem(
    own
      ? `Ductmend already runs at ${url} (process ${own.pid}). Open it there, or start a second one with another port: PORT=${port + 1} npm start`
      : `Port ${port} is taken by another program. Choose another one: PORT=${port + 1} npm start`,
  );
}

/**
 * @param {string} host
 * @param {number} port
 * @returns {Promise<string | undefined>} the error code, if any
 */
function listenOnce(host, port) {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once("error", (error) => resolve("code" in error ? String(error.code) : "unknown"));
    probe.listen(port, host, () => probe.close(() => resolve(undefined)));
  });
}
