import { createDrawSource } from "#lib/numeric/create-draw-source.ts";
import type { Observer } from "#lib/simulate/observer.ts";
import { randomHouse } from "#lib/simulate/random-house.ts";
import type { TrueHouse } from "#lib/simulate/true-house.ts";

/**
 * A house whose answers follow by hand: three leaks with exponent 0.6, all at the plenums, an attic at outdoor pressure,
 * runs and equipment so wide that the ducts stand at one pressure.
 */
export const PLAIN_HOUSE: TrueHouse = {
  id: "plain",
  floorAreaFt2: 2000,
  envelope: { flowCfm25: 1200, exponent: 0.65 },
  zones: [
    {
      id: "attic",
      kind: "attic",
      label: "Attic",
      toHouse: { flowCfm25: 1, exponent: 0.6 },
      toOutside: { flowCfm25: 60_000, exponent: 0.55 },
    },
  ],
  rooms: [{ id: "room-1", label: "Bedroom", doorGap: { flowCfm25: 150, exponent: 0.5 }, envelopeShare: 0.2 }],
  branches: [
    branch("supply-1", "supply", "room-1"),
    branch("supply-2", "supply", "house"),
    branch("return-1", "return", "house"),
  ],
  airHandler: {
    flowAtZeroCfm: 1000,
    slopeCfmPerPa: 0,
    passage: { flowCfm25: 20_000, exponent: 0.5 },
    filter: { flowCfm25: 700, exponent: 0.5 },
    heatingOutputBtuPerH: 54_000,
  },
  leaks: [
    { id: "plenum", side: "supply", label: "Plenum", zoneId: "attic", flowCfm25: 120, exponent: 0.6 },
    { id: "boot", side: "supply", label: "Boot", zoneId: "house", flowCfm25: 60, exponent: 0.6 },
    { id: "cabinet", side: "return", label: "Cabinet", zoneId: "attic", flowCfm25: 80, exponent: 0.6 },
  ],
};

function branch(id: string, side: "supply" | "return", roomId: string): TrueHouse["branches"][number] {
  const wide = { flowCfm25: 20_000, exponent: 0.5 };
  return { id, side, label: id, roomId, duct: wide, register: { flowCfm25: 900, exponent: 0.5 } };
}

/** House number k of a seeded row of random houses. */
export function randomHouseNumber(k: number, seed = 1): TrueHouse {
  const uniforms = new Float64Array(400);
  createDrawSource(seed).fillUniforms(k, uniforms);
  let next = 0;
  return randomHouse(() => uniforms[next++]!);
}

/**
 * Instruments as good as they claim, errors anywhere in their band: fan ±5 %, house fan ±3 %, gauge ±1 % of the reading.
 * The gauge's error at zero is taken off with the baseline; what drifts since, and wind, is the noise of 0.1 Pa.
 */
export function observerNumber(k: number, seed = 2): Observer {
  const uniforms = new Float64Array(3);
  const normals = new Float64Array(400);
  createDrawSource(seed).fillUniforms(k, uniforms);
  createDrawSource(seed + 1).fillNormals(k, normals);
  let next = 0;
  const inBand = (index: number) => 2 * uniforms[index]! - 1;
  return {
    gauge: { errorInBand: inBand(0), accuracyShare: 0.01, accuracyPa: 0, resolutionPa: 0.1, noisePa: 0.1 },
    ductFanErrorShare: 0.05 * inBand(1),
    houseFanErrorShare: 0.03 * inBand(2),
    nextNormal: () => normals[next++ % normals.length]!,
  };
}
