import { defaultDuctAreas } from "#lib/distribution/duct-area.ts";
import { BURIED_R_VALUE_GAIN, effectiveRValue } from "#lib/distribution/effective-r-value.ts";
import type { DuctRun, DuctSystem, Side } from "#lib/job/duct-system.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { Ledger } from "../ledger.ts";
import type { ParameterSpace } from "../parameter-space.ts";
import type { PlaceBefore } from "./complete-places.ts";

/** The ducts of one system, gathered by place. */
export interface DuctModel {
  /** Σ area / effective R, Btu/(h·°F), by place. */
  supplyConductance: Float64Array;
  returnConductance: Float64Array;
  supplyAreaFt2: Float64Array;
  returnAreaFt2: Float64Array;
  /** Multiplies all conductances: what is not known of surface and insulation. */
  conductanceFactorAt: number;
  cyclingLoss: number;
  /** Share of the duct surface outside the rooms. */
  outsideAreaShare: number;
  runs: readonly { id: string; side: Side; areaFt2: number }[];
}

interface Input {
  job: Job;
  system: DuctSystem;
  pointer: string;
  places: readonly PlaceBefore[];
  ledger: Ledger;
  space: ParameterSpace;
}

const practice = { sourceId: "practice" } as const;
const DEFAULT_INSULATION = 4.2;
/** Cycling loss: sheet metal .05, flexible duct or board .02. Source: practice. */
const CYCLING_LOSS = { "sheet-metal": 0.05, flexible: 0.02, "duct-board": 0.02, "building-cavity": 0.05 } as const;

const outerArea = (run: DuctRun): number | null =>
  run.areaFt2 ??
  (run.lengthFt !== undefined && run.diameterIn !== undefined ? (Math.PI * run.diameterIn * run.lengthFt) / 12 : null);

/** Surfaces of the runs: as measured; where a side has runs without a size, the side's usual surface, shared evenly. */
function runAreas({ job, system, pointer, ledger }: Input): number[] {
  const floorAreaFt2 = job.house.conditionedFloorAreaFt2 * (system.servedFloorShare ?? 1 / job.systems.length);
  const usual = defaultDuctAreas({ floorAreaFt2, returnsCount: system.returnsCount ?? 1 });
  return system.runs.map((run, index) => {
    const area = outerArea(run);
    if (area !== null) return area;
    const side = system.runs.filter((each) => each.side === run.side);
    const known = side.reduce((sum, each) => sum + (outerArea(each) ?? 0), 0);
    const unknownCount = side.filter((each) => outerArea(each) === null).length;
    const whole = run.side === "supply" ? usual.supplyAreaFt2 : usual.returnAreaFt2;
    const value = Math.max(10, (whole - known) / unknownCount);
    return ledger.take<number>(undefined, {
      path: `${pointer}/runs/${index}/areaFt2`,
      title: `Surface of ${run.label ?? run.id}`,
      value,
      unit: "ft²",
      reason: "Not measured, so the usual duct surface for this floor area is shared among the runs without a size.",
      source: practice,
      low: 0.6 * value,
      high: 1.5 * value,
    });
  });
}

/** The ducts of one system with their gaps filled, each filled gap listed. */
export function completeDucts(input: Input): DuctModel {
  const { system, pointer, places, ledger, space } = input;
  const index = new Map(places.map((place, at) => [place.id, at]));
  const column = () => new Float64Array(places.length);
  const model = {
    supplyConductance: column(),
    returnConductance: column(),
    supplyAreaFt2: column(),
    returnAreaFt2: column(),
  };
  const areas = runAreas(input);
  let outsideArea = 0;
  let cyclingLoss = 0;
  let area = 0;
  system.runs.forEach((run, at) => {
    const place = index.get(run.placeId)!;
    const runArea = areas[at]!;
    const name = run.label ?? run.id;
    const insulationRValue = ledger.take(run.insulationRValue, {
      path: `${pointer}/runs/${at}/insulationRValue`,
      title: `Insulation of ${name}`,
      value: DEFAULT_INSULATION,
      unit: "h·ft²·°F/Btu",
      reason: "The common wrap of ducts of its time.",
      source: practice,
      low: 1,
      high: 8,
    });
    const material = ledger.take(run.material, {
      path: `${pointer}/runs/${at}/material`,
      title: `Material of ${name}`,
      value: "sheet-metal",
      unit: "",
      reason: "Taken as sheet metal, which stores the most heat between cycles.",
      source: practice,
    });
    const isBuried = run.isBuried ?? false;
    const { value: gain, unit: gainUnit, reason: gainReason, source: gainSource, low, high } = BURIED_R_VALUE_GAIN;
    const buriedRValue = isBuried
      ? ledger.take<number>(run.buriedRValue, {
          path: `${pointer}/runs/${at}/buriedRValue`,
          title: `What the attic insulation over ${name} adds`,
          value: gain,
          unit: gainUnit,
          reason: gainReason,
          source: gainSource,
          low,
          high,
        })
      : 0;
    const rValue = effectiveRValue({ insulationRValue, isBuried, buriedRValue });
    model[run.side === "supply" ? "supplyConductance" : "returnConductance"][place]! += runArea / rValue;
    model[run.side === "supply" ? "supplyAreaFt2" : "returnAreaFt2"][place]! += runArea;
    area += runArea;
    if (!places[place]!.isConditioned) {
      outsideArea += runArea;
      cyclingLoss += runArea * CYCLING_LOSS[material];
    }
  });
  const isMeasured = system.runs.every((run) => outerArea(run) !== null && run.insulationRValue !== undefined);
  return {
    ...model,
    conductanceFactorAt: space.add({
      key: `${system.id}/conductanceFactor`,
      group: "ducts",
      base: 1,
      spread: { shape: "relative", standardUncertainty: isMeasured ? 0.15 : 0.3, min: 0.3, max: 3 },
    }),
    cyclingLoss: outsideArea > 0 ? cyclingLoss / outsideArea : 0,
    outsideAreaShare: area > 0 ? outsideArea / area : 0,
    runs: system.runs.map((run, at) => ({ id: run.id, side: run.side, areaFt2: areas[at]! })),
  };
}
