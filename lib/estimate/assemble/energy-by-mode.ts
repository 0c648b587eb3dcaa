import { MONTHS_PER_YEAR } from "#lib/climate/climate-year.ts";
import type { ModeEnergy } from "#lib/job/result/energy-result.ts";
import { WATTS_PER_KILOWATT } from "#lib/units/conversions.ts";
import type { HouseModel } from "../complete/complete-house.ts";
import { BTU_PER_UNIT, type Fuel, SALE_UNIT } from "../fuels.ts";
import type { HouseKernel } from "../kernel/house-kernel.ts";
import type { HouseState } from "../kernel/house-state.ts";

type Purpose = ModeEnergy["purpose"];
const PURPOSES: readonly Purpose[] = ["heating", "cooling", "blower"];
type Account = Map<string, { purpose: Purpose; fuel: Fuel; months: number[] }>;

/** Adds a system's use to its purpose and fuel, month by month. */
function addTo(account: Account, purpose: Purpose, fuel: Fuel, uses: Float64Array, perUse: number): void {
  const key = `${purpose}/${fuel}`;
  const entry = account.get(key) ?? { purpose, fuel, months: new Array<number>(MONTHS_PER_YEAR).fill(0) };
  const slotsPerMonth = uses.length / MONTHS_PER_YEAR;
  for (let slot = 0; slot < uses.length; slot++)
    entry.months[Math.floor(slot / slotsPerMonth)]! += perUse * uses[slot]!;
  account.set(key, entry);
}

function accountOf(house: HouseModel, state: HouseState): Account {
  const account: Account = new Map();
  house.systems.forEach(({ heating }, s) => {
    const { modes, blowerPowerW } = state.systems[s]!;
    for (const mode of ["heating", "cooling"] as const) {
      const modeState = modes[mode];
      if (!modeState) continue;
      const fuel = mode === "heating" ? heating!.fuel : "electricity";
      addTo(account, mode, fuel, modeState.inputBtuBySlot, 1 / BTU_PER_UNIT[fuel]);
      addTo(account, "blower", "electricity", modeState.runHoursBySlot, blowerPowerW / WATTS_PER_KILOWATT);
    }
  });
  return account;
}

/** Each purpose and fuel by month, before and after the chosen work: what the months of the fuels are made of. */
export function energyByModeOf(house: HouseModel, kernel: HouseKernel): ModeEnergy[] {
  const after = accountOf(house, kernel.after);
  const before = [...accountOf(house, kernel.before)].sort(
    ([, one], [, other]) => PURPOSES.indexOf(one.purpose) - PURPOSES.indexOf(other.purpose),
  );
  return before.map(([key, { purpose, fuel, months }]) => ({
    purpose,
    fuel,
    unit: SALE_UNIT[fuel],
    beforeByMonth: months,
    afterByMonth: after.get(key)!.months,
  }));
}
