import { readFileSync } from "node:fs";
import { Bench } from "tinybench";
import { createClaim } from "#lib/claims/create-claim.ts";
import { recomputeClaim } from "#lib/claims/recompute-claim.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { canonicalJson } from "#lib/hash/content-hash.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import { createDrawPool } from "#lib/work/draw-pool.ts";
import { startApp } from "#tests/browser/app-server.ts";
import { measureDrawBins } from "./draw-bins.ts";
import { measureImport } from "./import-claims.ts";
import { measureSolver60Leaks } from "./solver-60-leaks.ts";

interface Figure {
  name: string;
  value: number;
  unit: string;
}

const readJob = (file: string) => parseJob(JSON.parse(readFileSync(`lib/examples/${file}`, "utf8")));

/** Median of one task in milliseconds. */
async function medianMs(name: string, run: () => Promise<unknown>, time = 1500): Promise<number> {
  const bench = new Bench({ time, warmupTime: 500 });
  bench.add(name, run);
  await bench.run();
  const result = bench.tasks[0]?.result;
  if (!result || !("latency" in result)) throw new Error(`The benchmark ${name} did not finish`);
  return result.latency.p50;
}

async function estimateFigures(): Promise<Figure[]> {
  const job = readJob("hot-humid-two-systems.json");
  const reference = await loadReferenceData(job);
  const figures = [
    { name: "estimate-ms", value: await medianMs("estimate", () => estimate(job, reference)), unit: "ms" },
    {
      name: "estimate-10000-draws-ms",
      value: await medianMs("draws", () => estimate(job, reference, { draws: 10_000 }), 4000),
      unit: "ms",
    },
  ];
  for (const threads of [1, 2]) {
    const pool = createDrawPool({ threads });
    const drawn = () => estimate(job, reference, { draws: 10_000, drawElsewhere: pool.draw });
    const value = await medianMs(`draws in ${threads} threads`, drawn, 4000);
    figures.push({ name: `estimate-10000-draws-${threads}-threads-ms`, value, unit: "ms" });
    await pool.close();
  }
  return figures;
}

async function claimFigures(): Promise<Figure[]> {
  const job = readJob("mixed-crawlspace-retest.json");
  const reference = await loadReferenceData(job);
  const result = await estimate(job, reference, { draws: 100 });
  const claim = createClaim({
    job,
    reference,
    result,
    claimedBy: "Bench (invented)",
    claimedOn: "2026-11-20",
    measureLifeYears: 18,
    netToGrossRatio: 1,
  });
  // As a program receives it: a line of canonical text.
  const line = canonicalJson(claim);
  const ms = await medianMs("recompute", () =>
    recomputeClaim(JSON.parse(line), { loadReference: loadReferenceData, withDraws: false }),
  );
  return [{ name: "recompute-claims-per-second", value: 1000 / ms, unit: "1/s" }];
}

async function documentFigures(): Promise<Figure[]> {
  const { renderProposalPdf } = await import("#lib/documents/render-proposal-pdf.ts");
  const job = readJob("cold-attic-furnace.json");
  const result = await estimate(job, await loadReferenceData(job), { draws: 1000 });
  return [
    {
      name: "proposal-pdf-ms",
      value: await medianMs("pdf", () => renderProposalPdf({ job, result, language: "en", isoDate: "2026-11-25" })),
      unit: "ms",
    },
  ];
}

/** The list of jobs as the browser first gets it, from a server with a database of its own. */
async function pageFigures(): Promise<Figure[]> {
  const app = await startApp();
  try {
    const read = async () => (await fetch(`${app.url}/jobs`)).text();
    return [{ name: "first-page-ms", value: await medianMs("page", read), unit: "ms" }];
  } finally {
    await app.stop();
  }
}

const drawBins = measureDrawBins();
const figures: Figure[] = [
  ...drawBins.figures,
  ...(await estimateFigures()),
  await measureSolver60Leaks(),
  ...(await documentFigures()),
  ...(await claimFigures()),
  await measureImport(),
  ...(await pageFigures()),
];

process.stderr.write(`${drawBins.notes.join("\n")}\n`);
if (process.argv.includes("--json")) process.stdout.write(`${JSON.stringify(figures)}\n`);
else
  for (const { name, value, unit } of figures)
    process.stdout.write(`${name.padEnd(32)} ${value.toPrecision(4).padStart(12)} ${unit}\n`);
