import { join } from "node:path";
import { build } from "esbuild";
import { beforeAll, describe, expect, it } from "vitest";
import { estimate } from "#lib/estimate/estimate.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import { createDrawPool } from "#lib/work/draw-pool.ts";
import { createHighsSolver } from "#lib/work/highs-solver.ts";
import { exampleJob } from "#tests/estimate/example-jobs.ts";

const FOLDER = join(process.cwd(), ".build/tests/draw-worker");
const workerFile = join(FOLDER, "draw-worker.mjs");

beforeAll(async () => {
  await build({
    entryPoints: ["lib/work/draw-worker.ts"],
    outfile: workerFile,
    bundle: true,
    platform: "node",
    format: "esm",
    packages: "external",
    logLevel: "error",
  });
});

describe("the draw pool", () => {
  // A retest draws twice, a spray and several systems lay the parameters out in their own order.
  it.each(["hot-humid-two-systems.json", "mixed-crawlspace-retest.json"])(
    "gives the bytes of one thread with 1 and with 3 threads: %s",
    async (name) => {
      const job = exampleJob(name);
      const [reference, solve] = [await loadReferenceData(job), await createHighsSolver()];
      const options = { solve, draws: 2_500, seed: 3 };
      const alone = JSON.stringify(await estimate(job, reference, options));
      for (const threads of [1, 3]) {
        const seen: number[] = [];
        const pool = createDrawPool({ threads, workerFile, onProgress: ({ done }) => seen.push(done) });
        const shared = await estimate(job, reference, { ...options, drawElsewhere: pool.draw });
        await pool.close();
        expect(JSON.stringify(shared)).toBe(alone);
        expect(seen.at(-1)).toBe(options.draws);
        expect(seen.length % 3).toBe(0);
      }
      expect(JSON.stringify(await estimate(job, reference, { ...options, seed: 4 }))).not.toBe(alone);
    },
  );

  it("stops when it is cancelled", async () => {
    const job = exampleJob("cold-attic-furnace.json");
    const reference = await loadReferenceData(job);
    const stop = new AbortController();
    const pool = createDrawPool({ threads: 1, workerFile, signal: stop.signal, onProgress: () => stop.abort() });
    const working = estimate(job, reference, { draws: 100_000, drawElsewhere: pool.draw });
    await expect(working).rejects.toThrow(/abort/i);
    await pool.close();
  });
});
