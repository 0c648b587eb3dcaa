import { DAYS_IN_MONTH } from "#lib/climate/climate-year.ts";
import type { Bill } from "#lib/job/energy-use.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { Chance } from "./chance.ts";
import type { StudyHouse } from "./study-house.ts";
import type { TrueUse } from "./true-year.ts";

export type StudyEvidence = "bills" | "known-use" | "building";

const BTU_PER_KWH = 3412.14;
const BTU_PER_THERM = 100_000;

const sum = (values: readonly number[]) => values.reduce((total, each) => total + each, 0);

/** Twelve bills of a year that was not quite the typical one, with the household's own use in them. */
function billsOf(chance: Chance, house: StudyHouse, use: TrueUse): Bill[] {
  const winter = chance.lognormal(0.06);
  const summer = chance.lognormal(0.1);
  const gasBase = chance.uniform(0.25, 1.1);
  const gasSwing = chance.uniform(0, 0.25);
  const powerBase = chance.uniform(11, 30);
  const powerSwing = chance.uniform(0, 0.15);
  const isGas = house.heating === "gas-furnace";
  return DAYS_IN_MONTH.map((days, month): Bill => {
    const cold = Math.cos((2 * Math.PI * (month - 0.5)) / 12);
    const ofMonth = chance.lognormal(0.06);
    const heating = use.heatingBtu[month]! * winter * ofMonth;
    const cooling = use.coolingBtu[month]! * summer * ofMonth;
    const blower = use.blowerHeatingKWh[month]! * winter * ofMonth + use.blowerCoolingKWh[month]! * summer * ofMonth;
    const power = days * powerBase * (1 + powerSwing * cold) + blower + (cooling + (isGas ? 0 : heating)) / BTU_PER_KWH;
    const two = String(month + 1).padStart(2, "0");
    return {
      startDate: `2025-${two}-01`,
      endDate: `2025-${two}-${days}`,
      electricityKWh: power,
      ...(isGas ? { naturalGasTherms: days * gasBase * (1 + gasSwing * cold) + heating / BTU_PER_THERM } : {}),
    };
  });
}

/** What the household can show of its use: bills, a figure it knows, or nothing. */
export function energyOf(chance: Chance, house: StudyHouse, use: TrueUse, evidence: StudyEvidence): Job["energy"] {
  if (evidence === "building") return undefined;
  if (evidence === "bills") return { bills: billsOf(chance, house, use) };
  const told = (btu: readonly number[], per: number) => (sum(btu) / per) * chance.lognormal(0.09);
  return {
    knownUse: {
      ...(house.heating === "gas-furnace"
        ? { heatingNaturalGasTherms: told(use.heatingBtu, BTU_PER_THERM) }
        : { heatingElectricityKWh: told(use.heatingBtu, BTU_PER_KWH) }),
      coolingElectricityKWh: told(use.coolingBtu, BTU_PER_KWH),
    },
  };
}
