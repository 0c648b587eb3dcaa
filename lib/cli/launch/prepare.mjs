import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { withProcessLock } from "../../store/embedded/process-lock.mjs";
import { bundleCommandLine } from "./bundle.mjs";
import { fingerprint, isStamped, stamp } from "./fingerprint.mjs";
import { LaunchProblem, runStep } from "./run-program.mjs";
import { otherServers } from "./running-servers.mjs";

/** npm may wait on a slow network; a second start waits that long for the first. */
const LONGEST_PREPARATION_MS = 15 * 60_000;

/**
 * @typedef {object} Step
 * @property {string} stampFile kept beside what the step makes, so that both vanish together
 * @property {readonly string[]} sources files and folders that decide whether the step is due
 * @property {(root: string) => boolean} [isDoneAlready] for a result that somebody else made
 * @property {(root: string) => Promise<void>} run
 */

/** @type {Step} */
const install = {
  stampFile: "node_modules/.ductmend-installed",
  sources: ["package-lock.json"],
  isDoneAlready: isInstalledAsLocked,
  run: async (root) => {
    // NODE_ENV=production would drop what the build needs; a user's setting must not decide that.
    await runStep("Installing packages", npm(), ["ci", "--include=dev", "--no-audit", "--no-fund"], {
      cwd: root,
      env: { ...process.env, NODE_ENV: "development" },
    });
  },
};

/** @type {Step} */
const generateClient = {
  stampFile: "lib/store/generated/.made-from",
  sources: ["prisma/schema.prisma", "prisma.config.ts", "package-lock.json"],
  run: (root) =>
    runStep("Making the database client", process.execPath, ["node_modules/prisma/build/index.js", "generate"], {
      cwd: root,
    }),
};

/** @type {Step} */
const bundle = {
  stampFile: ".build/cli/.made-from",
  sources: ["lib", "tests/bench", "prisma/schema.prisma", "package-lock.json", "tsconfig.json"],
  run: bundleCommandLine,
};

/** @type {Step} */
const buildWeb = {
  stampFile: `${process.env.NEXT_DIST_DIR ?? ".next"}/.made-from`,
  sources: [
    "app",
    "lib",
    "public",
    "prisma/schema.prisma",
    "package-lock.json",
    "next.config.ts",
    "proxy.ts",
    "instrumentation.ts",
    "tsconfig.json",
  ],
  run: async (root) => {
    const [other] = otherServers(root);
    if (other) {
      throw new LaunchProblem(
        `Ductmend runs from this folder at ${other.url} (process ${other.pid}), and the sources have changed since it started. Stop it first, then start again.`,
      );
    }
    await runStep("Building the web app", process.execPath, ["node_modules/next/dist/bin/next", "build"], {
      cwd: root,
      env: { ...process.env, NODE_ENV: "production", NEXT_TELEMETRY_DISABLED: "1" },
    });
  },
};

const STEPS = { install, generateClient, bundle, buildWeb };

/** @typedef {keyof typeof STEPS} StepName */

/**
 * Brings the named steps up to date, in order, and does nothing when they are. Only one process at a time prepares.
 * @param {string} root
 * @param {readonly StepName[]} names
 */
export async function prepare(root, names) {
  if (names.every((name) => isUpToDate(root, STEPS[name]))) return;
  const onWait = (/** @type {number} */ holder) =>
    process.stderr.write(`Another start (process ${holder}) is preparing Ductmend; waiting for it …\n`);
  const lock = { file: join(root, ".build/prepare.lock"), timeoutMs: LONGEST_PREPARATION_MS, onWait };
  await withProcessLock(lock, async () => {
    for (const name of names) {
      const step = STEPS[name];
      if (isUpToDate(root, step)) continue;
      // Taken before the work: what changes while it runs makes the next start do it again.
      const madeFrom = fingerprint(root, step.sources);
      if (!step.isDoneAlready?.(root)) await step.run(root);
      stamp(join(root, step.stampFile), madeFrom);
    }
  });
}

/**
 * @param {string} root
 * @param {Step} step
 */
function isUpToDate(root, step) {
  const file = join(root, step.stampFile);
  return existsSync(file) && isStamped(file, fingerprint(root, step.sources));
}

/**
 * npm keeps its own record of what it installed. Where every locked package stands there in the locked version,
 * somebody ran `npm install` and a second installation would only cost time.
 * @param {string} root
 */
function isInstalledAsLocked(root) {
  const record = join(root, "node_modules/.package-lock.json");
  if (!existsSync(record)) return false;
  const installed = JSON.parse(readFileSync(record, "utf8")).packages;
  const locked = JSON.parse(readFileSync(join(root, "package-lock.json"), "utf8")).packages;
  return Object.entries(locked).every(
    ([path, entry]) => path === "" || entry.optional || installed[path]?.version === entry.version,
  );
}

function npm() {
  return process.platform === "win32" ? "npm.cmd" : "npm";
}
