import type { AirPath } from "#lib/simulate/true-house.ts";
import type { StudyHouse } from "./study-house.ts";
import type { TrueAir } from "./true-air.ts";

/** Air that comes in through the shell, cfm, blower off and on. */
export interface ShellAir {
  off: number;
  on: number;
}

const STACK_PA_PER_F_AND_STOREY = 0.006;
const STEPS = 400;
const FURTHEST_SHIFT = 6;

/**
 * Inflow over that of the undisturbed shell, by how far the neutral level is pushed: openings spread evenly over the
 * height, each passing its pressure to a power, the level shifted (in half heights) until the flows balance.
 */
function inflowTable(exponent: number): { unbalanced: Float64Array; inflow: Float64Array } {
  const power = exponent + 1;
  const signed = (x: number) => (x > 0 ? x ** power : 0);
  const unbalanced = new Float64Array(STEPS + 1);
  const inflow = new Float64Array(STEPS + 1);
  for (let k = 0; k <= STEPS; k++) {
    const shift = (FURTHEST_SHIFT * k) / STEPS;
    const below = signed(1 + shift) - signed(shift - 1);
    inflow[k] = below;
    unbalanced[k] = below - signed(1 - shift);
  }
  return { unbalanced, inflow };
}

const tables = new WeakMap<AirPath, ReturnType<typeof inflowTable>>();

/** Inflow over natural inflow while so much more is drawn out than in; beyond the table all of it comes in. */
function inflowRatio(envelope: AirPath, drawnRatio: number): number {
  const table = tables.get(envelope) ?? inflowTable(envelope.exponent);
  tables.set(envelope, table);
  const { unbalanced, inflow } = table;
  if (drawnRatio >= unbalanced[STEPS]!) return drawnRatio;
  let low = 0;
  let high = STEPS;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (unbalanced[middle]! <= drawnRatio) low = middle;
    else high = middle;
  }
  const part = (drawnRatio - unbalanced[low]!) / (unbalanced[high]! - unbalanced[low]!);
  return inflow[low]! + part * (inflow[high]! - inflow[low]!);
}

/**
 * Air through the shell. Blower off: stack and wind in a power law. On: the neutral level of the house is pushed by what
 * leaks to outside draw out or bring in, found from the balance of flows over its height, not from a rule.
 */
export function shellAir(house: StudyHouse, air: TrueAir, differenceF: number): ShellAir {
  const { envelope } = house.network;
  const drivePa = STACK_PA_PER_F_AND_STOREY * Math.abs(differenceF) * house.storeysCount + house.windPa;
  const off = envelope.flowCfm25 * (drivePa / 25) ** envelope.exponent;
  const drawn = air.supplyOutdoorsCfm - air.returnOutdoorsCfm;
  const more = off * inflowRatio(envelope, Math.abs(drawn) / off);
  // Pushed, the house loses what it gains when pulled, and takes in so much less.
  return { off, on: drawn >= 0 ? more : more + drawn };
}
