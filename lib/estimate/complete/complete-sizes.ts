import type { DuctSystem } from "#lib/job/duct-system.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { FLOOR_AREA_SPAN_FT2, SIZE_FACTORS, usualEquipmentSize } from "#lib/job/usual-equipment-size.ts";
import type { BtuPerHour, Ratio, Share } from "#lib/units/quantity.ts";
import type { Ledger } from "../ledger.ts";

/** What the equipment of a system puts into the air or takes out of it, and its standard uncertainty over that. */
export interface EquipmentSize {
  btuPerH: BtuPerHour;
  doubtRatio: Ratio;
}

type Mode = "heating" | "cooling";
export type EquipmentSizes = Readonly<Record<Mode, EquipmentSize>>;

/** Standard uncertainty of a size by where it is from. Source: practice, from memory. */
const SIZE_DOUBT = { nameplate: 0.06, otherCapacity: 0.1, floorArea: 0.25 } as const;
/** A heat pump's capacity at 47 °F over its cooling capacity. Source: practice, from memory. */
const PUMP_FACTORS = { low: 0.85, high: 1.15 } as const;

/**
 * The sizes of a system's equipment; one that was not read from the nameplate is the usual one for the floor it serves,
 * and is listed. A heat pump's two capacities are about the same, so the one that was read stands for the other.
 */
export function completeSizes({
  job,
  system,
  servedShare,
  pointer,
  ledger,
}: {
  job: Job;
  system: DuctSystem;
  servedShare: Share;
  pointer: string;
  ledger: Ledger;
}): EquipmentSizes {
  const { heating, cooling } = system;
  const { low, high } = FLOOR_AREA_SPAN_FT2;
  const servedFt2 = Math.min(high, Math.max(low, servedShare * job.house.conditionedFloorAreaFt2));
  const usual = usualEquipmentSize({ floorAreaFt2: servedFt2 });
  const isPump = heating?.kind === "heat-pump";
  const isOneUnit = isPump && cooling?.kind === "heat-pump";
  const told = { heating: heating?.outputBtuPerH, cooling: cooling?.capacityBtuPerH };
  const take = (mode: Mode): EquipmentSize => {
    if (!(mode === "heating" ? heating : cooling)) return { btuPerH: 0, doubtRatio: 0 };
    const other = isOneUnit ? told[mode === "heating" ? "cooling" : "heating"] : undefined;
    const usualMode = isPump ? "cooling" : mode;
    const value = other ?? usual[`${usualMode}BtuPerH`];
    const factors = other === undefined ? SIZE_FACTORS[usualMode] : PUMP_FACTORS;
    const btuPerH = ledger.take<number>(told[mode], {
      path: `${pointer}/${mode}/${mode === "heating" ? "outputBtuPerH" : "capacityBtuPerH"}`,
      title: mode === "heating" ? `Heating output of ${system.label}` : `Cooling capacity of ${system.label}`,
      value,
      unit: "Btu/h",
      reason:
        other === undefined
          ? "What a floor of this area usually has; the nameplate tells."
          : "A heat pump heats at 47 °F with about what it cools with.",
      source: { sourceId: "practice" },
      low: factors.low * value,
      high: factors.high * value,
    });
    const from = told[mode] !== undefined ? "nameplate" : other !== undefined ? "otherCapacity" : "floorArea";
    return { btuPerH, doubtRatio: SIZE_DOUBT[from] };
  };
  return { heating: take("heating"), cooling: take("cooling") };
}
