import { housePressure } from "#lib/distribution/house-pressure.ts";
import type { HousePressure } from "#lib/job/result/leakage-result.ts";
import { formatNumber } from "#lib/units/format.ts";
import type { HouseModel } from "../complete/complete-house.ts";
import type { HouseKernel } from "../kernel/house-kernel.ts";
import type { HouseState } from "../kernel/house-state.ts";

const TEST_PA = 50;
/** Below this nobody can tell it from the wind. Source: practice. */
const NOTICED_PA = 0.5;

/** No gauge tells less. Source: practice. */
const ZERO_PA = 0.05;

const signed = (pressurePa: number): string =>
  Math.abs(pressurePa) < ZERO_PA
    ? "0 Pa"
    : `${pressurePa > 0 ? "+" : ""}${formatNumber(pressurePa, { significantDigits: 2 })} Pa`;

function sayPressure(beforePa: number, afterPa: number): string {
  const change = `${signed(beforePa)} before the work, ${signed(afterPa)} after it, all blowers on`;
  const worst = Math.abs(beforePa) > Math.abs(afterPa) ? beforePa : afterPa;
  if (Math.abs(worst) < NOTICED_PA) return `${change}: too little to notice.`;
  return worst < 0
    ? `${change}: supply leaks blow air out of the house, so it draws outdoor air in, and can draw on a chimney.`
    : `${change}: return leaks draw air into the house, which pushes room air out through its walls.`;
}

/** What unequal leaks do to the pressure of the whole house while every blower runs, at the best estimates. */
export function housePressureOf(house: HouseModel, kernel: HouseKernel): HousePressure {
  const { envelopeLeakageCfm50, envelopeExponent } = house.loads;
  const envelopeCoefficient = envelopeLeakageCfm50 / TEST_PA ** envelopeExponent;
  const pressureOf = ({ systems }: HouseState): number =>
    housePressure({
      supplyLeakageCfm: systems.reduce((sum, { leaks }) => sum + leaks.supplyOutsideCfm, 0),
      returnLeakageCfm: systems.reduce((sum, { leaks }) => sum + leaks.returnOutsideCfm, 0),
      envelopeCoefficient,
      envelopeExponent,
    }).housePressurePa;
  const [beforePa, afterPa] = [pressureOf(kernel.before), pressureOf(kernel.after)];
  return { beforePa, afterPa, explanation: sayPressure(beforePa, afterPa) };
}
