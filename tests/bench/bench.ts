import { readFileSync } from "node:fs";
import { estimate } from "#lib/estimate/estimate.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import { createDrawPool } from "#lib/work/draw-pool.ts";
import { startApp } from "#tests/browser/app-server.ts";
import { measureDrawBins } from "./draw-bins.ts";
import { measureImport } from "./import-claims.ts";
import { medianMs } from "./median-ms.ts";
import { measureRecompute, measureRecomputeAlone, RECOMPUTE_ALONE } from "./recompute-claims.ts";
import { measureSolver60Leaks } from "./solver-60-leaks.ts";

interface Figure {
  name: string;
  value: number;
  unit: string;
}

const readJob = (file: string) => parseJob(JSON.parse(readFileSync(`lib/examples/${file}`, "utf8")));

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

async function everyFigure(): Promise<Figure[]> {
  const drawBins = measureDrawBins();
  const figures = [
    ...drawBins.figures,
    ...(await estimateFigures()),
    await measureSolver60Leaks(),
    ...(await documentFigures()),
    measureRecomputeAlone(),
    await measureImport(),
    ...(await pageFigures()),
  ];
  process.stderr.write(`${drawBins.notes.join("\n")}\n`);
  return figures;
}

const figures = process.argv.includes(RECOMPUTE_ALONE) ? [await measureRecompute()] : await everyFigure();
if (process.argv.includes("--json")) process.stdout.write(`${JSON.stringify(figures)}\n`);
else
  for (const { name, value, unit } of figures)
    process.stdout.write(`${name.padEnd(32)} ${value.toPrecision(4).padStart(12)} ${unit}\n`);
