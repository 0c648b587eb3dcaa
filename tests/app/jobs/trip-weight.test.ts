import { gzipSync } from "node:zlib";
import { build, type Plugin } from "esbuild";
import { describe, expect, it } from "vitest";

const ROOT = new URL("../../../", import.meta.url).pathname;
/** What the page brings of its own beside the framework (about 140 kB): with both it stays below 250 kB. */
const MOST_GZIP_BYTES = 60_000;
/** What belongs to the engine or to reading files, and comes only when it is needed. */
const KEPT_OUT = ["zod", "d3-scale", "@stdlib", "@noble", "csv-parse", "fast-xml-parser", "react-aria-components"];

/** The page's own modules; what the server keeps for itself stays out, as in the built app. */
const asOnThePage: Plugin = {
  name: "as-on-the-page",
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^#(lib|app)\// }, ({ path }) => ({ path: `${ROOT}${path.slice(1)}` }));
    onResolve({ filter: /^(react|react-dom|next)(\/|$)/ }, ({ path }) => ({ path, external: true }));
    onResolve({ filter: /(save-job|actions)\.ts$/ }, ({ path }) => ({ path, namespace: "server-action" }));
    onLoad({ filter: /.*/, namespace: "server-action" }, () => ({ contents: "module.exports = {}" }));
  },
};

async function bundled(source: string) {
  const { outputFiles, metafile } = await build({
    stdin: { contents: source, resolveDir: ROOT, loader: "ts" },
    bundle: true,
    splitting: true,
    minify: true,
    format: "esm",
    jsx: "automatic",
    write: false,
    metafile: true,
    outdir: ROOT,
    plugins: [asOnThePage],
    loader: { ".css": "empty" },
    logLevel: "silent",
  });
  const [name, { inputs }] = Object.entries(metafile.outputs).find(([, { entryPoint }]) => entryPoint === "<stdin>")!;
  const file = outputFiles.find(({ path }) => path.endsWith(name))!;
  return { inputs: Object.keys(inputs), gzipBytes: gzipSync(file.contents).length };
}

const packagesOf = (inputs: readonly string[]): string[] =>
  KEPT_OUT.filter((name) => inputs.some((path) => path.includes(`node_modules/${name}`)));

describe("what the job page brings before the first key", () => {
  it("neither the engine's libraries nor those that read files, and little of its own", async () => {
    const { inputs, gzipBytes } = await bundled(
      `export * from "#app/jobs/trip/trip.tsx"; export * from "#app/jobs/trip/step.tsx";`,
    );
    expect(inputs.length).toBeGreaterThan(50);
    expect(packagesOf(inputs)).toEqual([]);
    expect(gzipBytes).toBeLessThan(MOST_GZIP_BYTES);
  });

  it("would find them, were they there", async () => {
    const { inputs } = await bundled(`export * from "#app/jobs/trip/trip.tsx"; export * from "#lib/job/parse-job.ts";`);
    expect(packagesOf(inputs)).toContain("zod");
  });
});
