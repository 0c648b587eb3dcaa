import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createFixedEquipmentSeason, fillFixedEquipmentSeason } from "#lib/distribution/fixed-equipment-season.ts";
import { createUsefulLine, fillUsefulHeating } from "#lib/distribution/useful-line.ts";

const DRAWS = 20_000;
const BINS = 300;
const ROUNDS = 7;
/** Two programs that add in another order agree this well. */
const CHECK_TOLERANCE_RATIO = 1e-12;

/** The season that the C program makes for itself. */
function season() {
  const column = (read: (bin: number) => number) => Float64Array.from({ length: BINS }, (_, bin) => read(bin));
  return {
    count: BINS,
    temperatureF: column((b) => -20 + (80 * b) / BINS),
    sunBtuPerHFt2: column((b) => (b % 7 === 0 ? 0 : 3 * (b % 11))),
    groundF: column((b) => 45 + (b % 9)),
    isNight: column((b) => (b % 3 === 0 ? 1 : 0)),
    humidityRatio: column(() => 0),
    enthalpyBtuPerLb: column(() => 0),
    loadShare: column(() => 1 / BINS),
    hours: column(() => 1),
    slotIndex: Uint8Array.from({ length: BINS }, (_, b) => Math.floor((12 * b) / BINS)),
  };
}

function runHere(): { seconds: number; check: number } {
  const bins = season();
  const useful = createUsefulLine();
  Object.assign(useful.line, { constant: -9000, outdoor: 120, sun: 15, ground: 20, night: -80 });
  const out = new Float64Array(BINS);
  const capacities = new Float64Array(BINS);
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
      capacities.fill(capacityBtuPerH);
      fillUsefulHeating({ useful, weather: bins, capacityBtuPerH: capacities, out });
      fillFixedEquipmentSeason({ season: bins, usefulBtuPerH: out, capacityBtuPerH, out: result });
      check += result.runHoursPerBtu;
    }
    best = Math.min(best, (performance.now() - start) / 1000);
  }
  return { seconds: best, check };
}

/** The same in C, compiled here and now; null where there is no compiler. */
function runInC(): { seconds: number; check: number } | null {
  const folder = mkdtempSync(join(tmpdir(), "ductmend-bench-"));
  try {
    const program = join(folder, "draw-bins");
    execFileSync("cc", ["-O3", "-march=native", "-o", program, "tests/bench/draw-bins.c"], { stdio: "ignore" });
    const [seconds, check] = execFileSync(program, [String(DRAWS), String(BINS), String(ROUNDS)], { encoding: "utf8" })
      .trim()
      .split(" ")
      .map(Number);
    return { seconds: seconds!, check: check! };
  } catch {
    return null;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Draws × bins a second of the engine's inner loop, and of the same arithmetic in C. The two must agree. */
export function measureDrawBins(): { name: string; value: number; unit: string }[] {
  const here = runHere();
  const inC = runInC();
  const rate = (seconds: number) => (DRAWS * BINS) / seconds;
  if (inC && !(Math.abs(inC.check - here.check) <= CHECK_TOLERANCE_RATIO * Math.abs(here.check))) {
    throw new Error(`The engine and the C program do not agree: ${here.check} and ${inC.check}`);
  }
  return [
    { name: "draw-bins-per-second", value: rate(here.seconds), unit: "1/s" },
    ...(inC ? [{ name: "draw-bins-per-second-c", value: rate(inC.seconds), unit: "1/s" }] : []),
  ];
}
