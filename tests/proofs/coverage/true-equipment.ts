import type { StudyHouse } from "./study-house.ts";
import type { Running } from "./true-duct-air.ts";

export const BTU_PER_KWH = 3412.14;

/** Total capacity and sensible share of a coil by the air that enters it, and power by the outdoor air. From memory. */
export function coolingCoil(
  house: StudyHouse,
  running: Pick<Running, "enteringF" | "enteringW">,
  outdoorF: number,
  cfm: number,
) {
  const enthalpy = 0.24 * running.enteringF + running.enteringW * (1061 + 0.444 * running.enteringF);
  const wetBulbF = 67 + (enthalpy - 31.6) / 0.75;
  const flowRatio = cfm / ((400 * house.coolingBtuPerH) / 12_000);
  const capacity =
    house.coolingBtuPerH *
    (1 + 0.0115 * (wetBulbF - 67)) *
    (1 - 0.0055 * (outdoorF - 95)) *
    (1 + 0.18 * (Math.min(1.4, Math.max(0.5, flowRatio)) - 1));
  const share = 0.74 - 0.033 * (wetBulbF - 67) + 0.021 * (running.enteringF - 80) + 0.2 * (flowRatio - 1);
  // Nameplate SEER is the efficiency at 82 °F outdoors, cycling half of the time.
  const eer82 = house.seer / (1 - house.degradation / 2);
  const eer = eer82 * (1 - 0.0115 * (outdoorF - 82)) * (1 + 0.06 * (Math.min(1.3, flowRatio) - 1));
  return {
    capacity,
    sensible: capacity * Math.min(1, Math.max(0.55, share)),
    inputBtuPerH: (capacity / Math.max(4, eer)) * (BTU_PER_KWH / 1000),
  };
}

/** Output and input of a heat pump by the outdoor air: straight lines through two ratings, less what frost takes. */
export function heatPumpHeat(house: StudyHouse, outdoorF: number) {
  const per30 = (outdoorF - 17) / 30;
  const capacity47 = house.heatingBtuPerH;
  const capacity = capacity47 * (house.capacity17Ratio + (1 - house.capacity17Ratio) * per30);
  const power17 = (capacity47 * house.capacity17Ratio) / house.cop17;
  const power = power17 + (capacity47 / house.cop47 - power17) * per30;
  const frost = 1 - house.frostShare * Math.exp(-(((outdoorF - 33) / 9) ** 2));
  return {
    capacity: Math.max(0.18 * capacity47, capacity * frost),
    inputBtuPerH: Math.max(0.15 * (capacity47 / house.cop47), power),
  };
}
