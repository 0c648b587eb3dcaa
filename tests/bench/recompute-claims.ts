import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { createClaim } from "#lib/claims/create-claim.ts";
import { recomputeClaim } from "#lib/claims/recompute-claim.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { canonicalJson } from "#lib/hash/content-hash.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";

/** `npm run bench -- --recompute-alone` measures this alone. */
export const RECOMPUTE_ALONE = "--recompute-alone";

interface Figure {
  name: string;
  value: number;
  unit: string;
}

/** After so many claims the code is compiled for them, as it is for nearly all claims of a batch. */
const WARM_UP_CLAIMS = 4_000;
const CLAIMS = 6_000;

/** Claims recomputed a second without draws by this process, each from a line of canonical text, pauses and all. */
export async function measureRecompute(): Promise<Figure> {
  const job = parseJob(JSON.parse(readFileSync("lib/examples/mixed-crawlspace-retest.json", "utf8")));
  const reference = await loadReferenceData(job);
  const claim = createClaim({
    job,
    reference,
    result: await estimate(job, reference, { draws: 100 }),
    claimedBy: "Bench (invented)",
    claimedOn: "2026-11-20",
    measureLifeYears: 18,
    netToGrossRatio: 1,
  });
  const line = canonicalJson(claim);
  const recompute = async (count: number) => {
    for (let i = 0; i < count; i++)
      await recomputeClaim(JSON.parse(line), { loadReference: loadReferenceData, withDraws: false });
  };
  await recompute(WARM_UP_CLAIMS);
  const start = performance.now();
  await recompute(CLAIMS);
  const seconds = (performance.now() - start) / 1000;
  return { name: "recompute-claims-per-second", value: CLAIMS / seconds, unit: "1/s" };
}

/**
 * The same in a process of its own, as `recompute --batch` and a worker are: code that also drew proposals and solved
 * scopes before is compiled for all of these and runs slower.
 */
export function measureRecomputeAlone(): Figure {
  const [, program = ""] = process.argv;
  const out = execFileSync(process.execPath, [program, RECOMPUTE_ALONE, "--json"], { encoding: "utf8" });
  const [figure] = JSON.parse(out) as Figure[];
  if (!figure) throw new Error("The process that recomputes alone told no figure");
  return figure;
}
