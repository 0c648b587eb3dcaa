import { BTU_PER_H_PER_TON } from "#lib/distribution/equipment-airflow.ts";
import type { Leakage, NotYetFound, SiteResult, SystemResult } from "#lib/job/result/leakage-result.ts";
import { BTU_PER_KWH } from "#lib/units/conversions.ts";
import type { HouseModel } from "../complete/complete-house.ts";
import type { HouseKernel } from "../kernel/house-kernel.ts";
import { CELLS, type HouseState, type SystemState } from "../kernel/house-state.ts";
import { outputKey } from "../kernel/write-outputs.ts";
import { rangedOfFunction } from "../output-layout.ts";
import type { Mode } from "../season-bins.ts";
import type { SiteWorth } from "../value-leaks.ts";
import { designAirPath, destinationOf } from "./destination.ts";
import { type Evaluated, readRanged } from "./energy.ts";

/** Leakage before the work, of the house or one system. `floorAreaFt2` is what it serves. */
export function leakageOf(evaluated: Evaluated, scope: string, floorAreaFt2: number): Leakage {
  const at = (name: string) => evaluated.layout.at(outputKey.leakage(scope, name));
  const read = (name: string) => readRanged(evaluated, outputKey.leakage(scope, name));
  return {
    totalCfm25: read("total"),
    toOutsideCfm25: read("toOutside"),
    supplyToOutsideCfm25: read("supplyToOutside"),
    returnToOutsideCfm25: read("returnToOutside"),
    fractionOfFanFlow: rangedOfFunction(evaluated.outcome, (value) => value(at("toOutside")) / value(at("fanFlow"))),
    cfm25Per100Ft2: rangedOfFunction(evaluated.outcome, (value) => (100 * value(at("total"))) / floorAreaFt2),
  };
}

/** Air of each run: what the side moves less its leaks, shared by the duct's surface where nothing else is known. */
function runsOf(house: HouseModel, kernel: HouseKernel, index: number): SystemResult["runs"] {
  const { ducts } = house.systems[index]!;
  const airOf = (state: HouseState, side: "supply" | "return") => {
    const system = state.systems[index]!;
    return system.fanFlowCfm - (side === "supply" ? system.leaks.supplyAllCfm : system.leaks.returnAllCfm);
  };
  return ducts.runs.map((run) => {
    const side = ducts.runs.filter((each) => each.side === run.side);
    const share = run.areaFt2 / side.reduce((sum, each) => sum + each.areaFt2, 0);
    return {
      id: run.id,
      airBeforeCfm: share * airOf(kernel.before, run.side),
      airAfterCfm: share * airOf(kernel.after, run.side),
    };
  });
}

/** Distribution efficiency of one system over one season, before and after. */
export function seasonalOf(evaluated: Evaluated, systemId: string, mode: Mode) {
  const read = (name: string) => readRanged(evaluated, outputKey.efficiency(systemId, mode, name));
  return { seasonalBefore: read("seasonalBefore"), seasonalAfter: read("seasonalAfter") };
}

/** Leaks that push a heat pump into resistance heat are the dear ones: how much of it runs over the season. */
function supplementaryOf(was: SystemState, is: SystemState) {
  const of = ({ modes }: SystemState) => {
    const { supplementaryBtuBySlot, inputBtuBySlot } = modes.heating!;
    const strips = sum(supplementaryBtuBySlot);
    const all = sum(inputBtuBySlot);
    return { kWh: strips / BTU_PER_KWH, share: all > 0 ? strips / all : 0 };
  };
  const [before, after] = [of(was), of(is)];
  return { beforeKWh: before.kWh, afterKWh: after.kWh, beforeShare: before.share, afterShare: after.share };
}

const sum = (values: Float64Array): number => values.reduce((total, each) => total + each, 0);

/** The result of each system. The kernel's states must be those of the deterministic evaluation. */
export function systemsOf({
  house,
  kernel,
  evaluated,
}: {
  house: HouseModel;
  kernel: HouseKernel;
  evaluated: Evaluated;
}): SystemResult[] {
  return house.systems.map((system, index) => {
    const was = kernel.before.systems[index]!;
    const is = kernel.after.systems[index]!;
    const mode = (name: Mode) => {
      if (!was.modes[name]) return undefined;
      const read = (key: string) => readRanged(evaluated, outputKey.efficiency(system.id, name, key));
      const design = { before: read("designBefore"), after: read("designAfter") };
      const capacityAt = (name === "heating" ? system.heating! : system.cooling!).capacityAt;
      const regainedBtuPerH = (design.after.value - design.before.value) * house.space.parameters[capacityAt]!.base;
      return {
        designBefore: design.before,
        designAfter: design.after,
        ...seasonalOf(evaluated, system.id, name),
        destinationBefore: destinationOf({ house, kernel, state: was, mode: name }),
        destinationAfter: destinationOf({ house, kernel, state: is, mode: name }),
        registerDesignF: designAirPath({ house, kernel, state: was, mode: name }).registerF,
        capacity: {
          regainedBtuPerH,
          regainedTons: regainedBtuPerH / BTU_PER_H_PER_TON,
        },
        ...(was.modes[name]!.heatPump ? { supplementary: supplementaryOf(was, is) } : {}),
      };
    };
    return {
      id: system.id,
      leakage: leakageOf(evaluated, system.id, house.floorAreaFt2 * system.servedShare),
      distribution: { heating: mode("heating"), cooling: mode("cooling") },
      airflow: {
        fanFlowBeforeCfm: was.fanFlowCfm,
        fanFlowAfterCfm: is.fanFlowCfm,
        externalStaticBeforePa: was.externalStaticPa,
        externalStaticAfterPa: is.externalStaticPa,
        deliveredBeforeCfm: was.deliveredCfm,
        deliveredAfterCfm: is.deliveredCfm,
      },
      runs: runsOf(house, kernel, index),
    };
  });
}

/** Each leak with its size, reach outside, flow while running and yearly cost. */
export function sitesOf({
  house,
  evaluated,
  worth,
}: {
  house: HouseModel;
  evaluated: Evaluated;
  worth: SiteWorth;
}): SiteResult[] {
  return house.sites.map((site, index) => ({
    id: site.id,
    systemId: house.systems[site.systemIndex]!.id,
    cfm25: readRanged(evaluated, outputKey.site(site.id, "cfm25")),
    toOutsideCfm25: readRanged(evaluated, outputKey.site(site.id, "toOutsideCfm25")),
    operatingCfm: readRanged(evaluated, outputKey.site(site.id, "operatingCfm")),
    costUsdPerYear: worth.sites[index]!.usdPerYear,
  }));
}

/** Leakage that was measured but that no leak found so far explains, by system, side and where it goes. */
export function notYetFoundOf({ house, evaluated }: { house: HouseModel; evaluated: Evaluated }): NotYetFound[] {
  return house.groups.flatMap((group, g) => {
    const served = group.systemIndexes.reduce((sum, s) => sum + house.systems[s]!.servedShare, 0);
    return group.systemIndexes.flatMap((s) =>
      CELLS.map(({ side, isOutside }, c) => {
        const at = evaluated.layout.at(outputKey.cell(g, c));
        const share = house.systems[s]!.servedShare / served;
        return {
          systemId: house.systems[s]!.id,
          side,
          outside: isOutside,
          cfm25: rangedOfFunction(evaluated.outcome, (value) => share * value(at)),
        };
      }),
    );
  });
}
