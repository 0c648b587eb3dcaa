import { BTU_PER_KWH } from "#lib/units/conversions.ts";
import type { SeasonBins } from "../season-bins.ts";

/** What one system uses in one mode over a year, month by month. Filled anew at each evaluation. */
export interface ModeEnergy {
  /** Btu of fuel, or of electricity for resistance, heat pump and cooling; without the blower. */
  readonly inputBtuByMonth: Float64Array;
  /** Of that, by resistance heat that helps a heat pump out. */
  readonly supplementaryBtuByMonth: Float64Array;
  readonly runHoursByMonth: Float64Array;
}

export const createModeEnergy = (): ModeEnergy => ({
  inputBtuByMonth: new Float64Array(12),
  supplementaryBtuByMonth: new Float64Array(12),
  runHoursByMonth: new Float64Array(12),
});

/** How a system turns input into heat or cold. Capacity and COP are straight lines of the outdoor temperature. */
export interface EquipmentCurve {
  kind: "fixed" | "heat-pump";
  capacityBtuPerH: number;
  capacitySlopePerF: number;
  /** Output over input at 47 °F; for fixed equipment at any temperature. */
  efficiencyRatio: number;
  efficiencySlopePerF: number;
  degradationCoefficient: number;
}

const RATING_F = 47;
const LEAST_RATIO = 0.2;
const LEAST_COP = 1;
/** Between these a coil frosts and thaws: capacity and COP fall by the share below. Source: practice. */
const FROST_LOW_F = 17;
const FROST_HIGH_F = 45;
const FROST_CAPACITY_SHARE = 0.06;

interface Load {
  bins: SeasonBins;
  /** Distribution efficiency bin by bin. */
  efficiency: Float64Array;
  /** Heat or cold that the rooms need from this system in a year, Btu. */
  loadBtu: number;
  curve: EquipmentCurve;
}

/**
 * Fills what the equipment uses for a yearly load that the bins share out.
 * Fixed equipment: input = load/(η·efficiency). Heat pump: heat-pump-bin in every bin, so that leaks which push it into
 * resistance heat cost what they cost. Sources: derived; the degradation of part load is form of the rating procedure
 * (practice, from memory). Returns the yearly input in Btu. Allocates nothing.
 */
export function fillModeEnergy(out: ModeEnergy, { bins, efficiency, loadBtu, curve }: Load): number {
  out.inputBtuByMonth.fill(0);
  out.supplementaryBtuByMonth.fill(0);
  out.runHoursByMonth.fill(0);
  let total = 0;
  const isHeatPump = curve.kind === "heat-pump";
  for (let bin = 0; bin < bins.count; bin++) {
    const month = bins.monthIndex[bin]!;
    const requiredBtu = (loadBtu * bins.loadShare[bin]!) / efficiency[bin]!;
    let input: number;
    let runHours: number;
    if (isHeatPump) {
      const hours = bins.hours[bin]!;
      const outdoorF = bins.temperatureF[bin]!;
      const frost = outdoorF > FROST_LOW_F && outdoorF < FROST_HIGH_F ? 1 - FROST_CAPACITY_SHARE : 1;
      const capacity =
        curve.capacityBtuPerH * frost * Math.max(LEAST_RATIO, 1 + curve.capacitySlopePerF * (outdoorF - RATING_F));
      const cop = Math.max(
        LEAST_COP,
        frost * (curve.efficiencyRatio + curve.efficiencySlopePerF * (outdoorF - RATING_F)),
      );
      const requiredRate = requiredBtu / hours;
      const partLoad = requiredRate < capacity ? 1 - curve.degradationCoefficient * (1 - requiredRate / capacity) : 1;
      const supplementary = requiredRate > capacity ? (requiredRate - capacity) * hours : 0;
      input = (requiredBtu - supplementary) / (cop * partLoad) + supplementary;
      out.supplementaryBtuByMonth[month]! += supplementary;
      runHours = Math.min(hours, requiredBtu / capacity);
    } else {
      input = requiredBtu / curve.efficiencyRatio;
      runHours = requiredBtu / curve.capacityBtuPerH;
    }
    out.inputBtuByMonth[month]! += input;
    out.runHoursByMonth[month]! += runHours;
    total += input;
  }
  return total;
}

const SEARCH_STEPS = 40;
const SEARCH_TOLERANCE = 1e-9;

/**
 * The yearly load that makes a group of systems use exactly what is known to have been used: input(scale) = known.
 * Input grows with the load, so the root is bracketed and found by bounded false position with bisection.
 * @throws Error when the search does not close: our fault, since input is continuous and increasing.
 */
export function loadScaleForUse(knownBtu: number, inputOfScale: (scale: number) => number): number {
  if (!(knownBtu > 0)) return 0;
  const first = inputOfScale(1);
  if (!(first > 0)) return 0;
  // Fixed equipment is proportional: the first guess is the answer.
  let guess = knownBtu / first;
  let value = inputOfScale(guess);
  if (Math.abs(value - knownBtu) <= SEARCH_TOLERANCE * knownBtu) return guess;
  let low = 0;
  let lowValue = 0;
  let high = Number.POSITIVE_INFINITY;
  let highValue = Number.POSITIVE_INFINITY;
  for (let step = 0; step < SEARCH_STEPS; step++) {
    if (value < knownBtu) {
      low = guess;
      lowValue = value;
    } else {
      high = guess;
      highValue = value;
    }
    if (high === Number.POSITIVE_INFINITY) guess *= 1.5;
    else {
      const secant = low + ((knownBtu - lowValue) * (high - low)) / (highValue - lowValue);
      // False position sticks to one end on a curve; every third step halves.
      guess = step % 3 === 2 ? (low + high) / 2 : secant;
    }
    value = inputOfScale(guess);
    if (Math.abs(value - knownBtu) <= SEARCH_TOLERANCE * knownBtu) return guess;
  }
  throw new Error(`The load that explains ${knownBtu} Btu was not found`);
}

/** Kilowatt-hours of a blower: power by hours that it runs. */
export const blowerKWh = (powerW: number, hours: number): number => (powerW * hours) / 1000;
export const kWhOfBtu = (btu: number): number => btu / BTU_PER_KWH;
