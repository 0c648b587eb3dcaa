import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createFixedEquipmentSeason, fillFixedHeating } from "#lib/distribution/fixed-equipment-season.ts";
import { packRuns } from "#lib/distribution/season-runs.ts";
import { createUsefulLine } from "#lib/distribution/useful-line.ts";

const DRAWS = 20_000;
const BINS = 300;
const ROUNDS = 7;
/** Two programs that add in another order agree this well. */
const CHECK_TOLERANCE_RATIO = 1e-12;

/** The season that the other two make for themselves: a third of each month is night. */
function season() {
  const column = (read: (bin: number) => number) => Float64Array.from({ length: BINS }, (_, bin) => read(bin));
  const month = (bin: number) => Math.floor((12 * bin) / BINS);
  const isNight = (bin: number) => Math.floor((36 * bin) / BINS) % 3 === 2;
  return {
    count: BINS,
    temperatureF: column((b) => -20 + (80 * b) / BINS),
    sunBtuPerHFt2: column((b) => (isNight(b) ? 0 : 3 * (b % 11))),
    groundF: column((b) => 45 + month(b)),
    isNight: column((b) => (isNight(b) ? 1 : 0)),
    humidityRatio: column(() => 0),
    enthalpyBtuPerLb: column(() => 0),
    loadShare: column(() => 1 / BINS),
    hours: column(() => 1),
    slotIndex: Uint8Array.from({ length: BINS }, (_, b) => month(b)),
  };
}

function runHere(): Run {
  const runs = packRuns(season());
  const useful = createUsefulLine();
  const { line } = useful;
  line.constant = -9000;
  const result = createFixedEquipmentSeason();
  let best = Number.POSITIVE_INFINITY;
  let check = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const start = performance.now();
    check = 0;
    for (let k = 0; k < DRAWS; k++) {
      const wobble = k / DRAWS;
      const capacityBtuPerH = 60000 * (0.95 + 0.1 * wobble);
      useful.perCapacityFactor = 0.8 + 0.1 * wobble;
      line.outdoor = 120 + wobble;
      line.sun = 15 + wobble;
      line.ground = 20 - wobble;
      line.night = -80 + wobble;
      fillFixedHeating({ useful, runs, capacityBtuPerH, out: result });
      check += result.runHoursPerBtu;
    }
    best = Math.min(best, (performance.now() - start) / 1000);
  }
  return { seconds: best, check };
}

interface Run {
  seconds: number;
  check: number;
}

const SIZES = [String(DRAWS), String(BINS), String(ROUNDS)];

function readRun(output: string): Run {
  const [seconds, check] = output.trim().split(" ").map(Number);
  return { seconds: seconds!, check: check! };
}

/** The same in C, compiled here and now with what the compiler says of its loops; null where there is no compiler. */
function runInC(): (Run & { report: string }) | null {
  const folder = mkdtempSync(join(tmpdir(), "ductmend-bench-"));
  const source = "tests/bench/draw-bins.c";
  try {
    const program = join(folder, "draw-bins");
    const compiled = spawnSync(
      "cc",
      ["-O3", "-march=native", "-fopt-info-vec-optimized", "-fopt-info-vec-missed", "-o", program, source],
      { encoding: "utf8" },
    );
    if (compiled.status !== 0) return null;
    const run = readRun(execFileSync(program, SIZES, { encoding: "utf8" }));
    return { ...run, report: loopsIn(compiled.stderr) };
  } catch {
    return null;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Of the compiler's report the lines that say which loop became vectors and which could not. */
function loopsIn(report: string): string {
  const lines = report.split("\n").filter((line) => /optimized: loop|couldn't vectorize loop/.test(line));
  return lines.length > 0 ? [...new Set(lines)].join("\n") : "the compiler reports nothing of its loops";
}

/** The same vectorized with NumPy; null where Python or NumPy is missing. */
function runInNumpy(): Run | null {
  const run = spawnSync("python3", ["tests/bench/draw_bins.py", ...SIZES], { encoding: "utf8" });
  return run.status === 0 ? readRun(run.stdout) : null;
}

export interface DrawBinFigures {
  figures: { name: string; value: number; unit: string }[];
  /** For people: the compiler's report, and what could not be measured here. */
  notes: string[];
}

/** Draws × bins a second of the engine's inner loop, and of the same arithmetic in C and NumPy. They must agree. */
export function measureDrawBins(): DrawBinFigures {
  const here = runHere();
  const others = { c: runInC(), numpy: runInNumpy() };
  const rate = ({ seconds }: Run) => (DRAWS * BINS) / seconds;
  const figures = [{ name: "draw-bins-per-second", value: rate(here), unit: "1/s" }];
  const notes: string[] = [];
  for (const [name, run] of Object.entries(others)) {
    if (!run) {
      notes.push(`draw-bins-per-second-${name}: not available here`);
      continue;
    }
    if (!(Math.abs(run.check - here.check) <= CHECK_TOLERANCE_RATIO * Math.abs(here.check)))
      throw new Error(`The engine and the program in ${name} do not agree: ${here.check} and ${run.check}`);
    figures.push({ name: `draw-bins-per-second-${name}`, value: rate(run), unit: "1/s" });
    notes.push(`engine over ${name}: ${(run.seconds / here.seconds).toFixed(2)}`);
  }
  if (others.c) notes.push(`What the C compiler says of its loops:\n${others.c.report}`);
  return { figures, notes };
}
