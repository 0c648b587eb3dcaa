import { MONTHS_PER_YEAR } from "#lib/climate/climate-year.ts";
import { CAPACITY_TEST_F } from "#lib/distribution/cooling-performance.ts";
import { monthlyCharge } from "#lib/savings/rates.ts";
import { WATTS_PER_KILOWATT } from "#lib/units/conversions.ts";
import type { HouseModel } from "../complete/complete-house.ts";
import type { TariffModel } from "../complete/complete-tariffs.ts";
import { BTU_PER_UNIT, FUELS, type Fuel } from "../fuels.ts";
import type { OutputLayout } from "../output-layout.ts";
import type { WorkPlan } from "./house-kernel.ts";
import { CELLS, type HouseState } from "./house-state.ts";

/** Full-load efficiency at 95 °F outdoors over SEER. Source: practice. */
const PEAK_EER_OF_SEER = 0.87;

/** Writes what a state says into the output array. The layout is made once; the writer only fills. */
export interface OutputWriter {
  writeBefore(state: HouseState, parameters: Float64Array, out: Float64Array): void;
  writeAfter(
    planIndex: number,
    before: HouseState,
    after: HouseState,
    parameters: Float64Array,
    out: Float64Array,
  ): void;
}

/** Keys of the outputs, so that readers and writer agree. */
export const outputKey = {
  leakage: (scope: string, name: string) => `leakage/${scope}/${name}`,
  efficiency: (systemId: string, mode: string, name: string) => `efficiency/${systemId}/${mode}/${name}`,
  site: (id: string, name: string) => `site/${id}/${name}`,
  cell: (group: number, cell: number) => `cell/${group}/${cell}`,
  /** What a fuel costs in a year, fixed charges left out: heating, cooling and blower on top of everything else. */
  charge: (fuel: Fuel, when: "before" | "after") => `charge/${fuel}/${when}`,
  energy: (fuel: Fuel, when: "before" | "after", month: number | "year") => `energy/${fuel}/${when}/${month}`,
  plan: (index: number, name: string) => `plan/${index}/${name}`,
} as const;

const LEAKAGE_NAMES = ["total", "toOutside", "supplyToOutside", "returnToOutside", "fanFlow"] as const;

export function createOutputWriter({
  house,
  plans,
  layout,
  byMonth,
}: {
  house: HouseModel;
  plans: readonly WorkPlan[];
  layout: OutputLayout;
  /** False: energy stands there by year alone. */
  byMonth: boolean;
}): OutputWriter {
  const scopes = ["house", ...house.systems.map((system) => system.id)];
  const leakageAt = scopes.map((scope) => LEAKAGE_NAMES.map((name) => layout.add(outputKey.leakage(scope, name))));
  const siteAt = house.sites.map(({ id }) =>
    ["cfm25", "toOutsideCfm25", "operatingCfm"].map((name) => layout.add(outputKey.site(id, name))),
  );
  const cellAt = house.groups.map((_, group) => CELLS.map((_cell, cell) => layout.add(outputKey.cell(group, cell))));
  const efficiencyAt = house.systems.map(({ id, heating, cooling }) => ({
    heating: heating
      ? ["designBefore", "seasonalBefore", "designAfter", "seasonalAfter"].map((name) =>
          layout.add(outputKey.efficiency(id, "heating", name)),
        )
      : null,
    cooling: cooling
      ? ["designBefore", "seasonalBefore", "designAfter", "seasonalAfter"].map((name) =>
          layout.add(outputKey.efficiency(id, "cooling", name)),
        )
      : null,
  }));
  const months = byMonth ? [...Array(MONTHS_PER_YEAR).keys()] : [];
  const energyAt = FUELS.map((fuel) =>
    (["before", "after"] as const).map((when) => ({
      months: months.map((month) => layout.add(outputKey.energy(fuel, when, month))),
      year: layout.add(outputKey.energy(fuel, when, "year")),
    })),
  );
  const planAt = plans.map((_, index) =>
    ["predictedTotal", "predictedToOutside", "savedUsd", "peakKW", "co2Lb", "predictedOutsideShare"].map((name) =>
      layout.add(outputKey.plan(index, name)),
    ),
  );
  const chargeAt = FUELS.map((fuel) =>
    (["before", "after"] as const).map((when) => layout.add(outputKey.charge(fuel, when))),
  );
  const { slotsPerMonth } = house.loads.heating;
  const slots = MONTHS_PER_YEAR * slotsPerMonth;
  const byFuel = FUELS.map(() => new Float64Array(slots));
  const beforeByFuel = FUELS.map(() => new Float64Array(slots));
  const { priceAt, tariffs, carbonLbPerUnit } = house.prices;

  function fillByFuel(state: HouseState, target: Float64Array[]): void {
    for (const uses of target) uses.fill(0);
    for (let s = 0; s < house.systems.length; s++) {
      const systemState = state.systems[s]!;
      for (const mode of ["heating", "cooling"] as const) {
        const modeState = systemState.modes[mode];
        if (!modeState) continue;
        const fuel = mode === "cooling" ? 0 : FUELS.indexOf(house.systems[s]!.heating!.fuel);
        for (let slot = 0; slot < slots; slot++) {
          target[fuel]![slot]! += modeState.inputBtuBySlot[slot]! / BTU_PER_UNIT[FUELS[fuel]!];
          target[0]![slot]! += (systemState.blowerPowerW * modeState.runHoursBySlot[slot]!) / WATTS_PER_KILOWATT;
        }
      }
    }
  }

  function writeEnergy(when: 0 | 1, source: readonly Float64Array[], out: Float64Array): void {
    for (let f = 0; f < FUELS.length; f++) {
      const places = energyAt[f]![when]!;
      let year = 0;
      for (let month = 0; month < MONTHS_PER_YEAR; month++) {
        let value = 0;
        for (let part = 0; part < slotsPerMonth; part++) value += source[f]![slotsPerMonth * month + part]!;
        if (byMonth) out[places.months[month]!] = value;
        year += value;
      }
      out[places.year] = year;
    }
  }

  function writeEfficiency(state: HouseState, offset: 0 | 2, out: Float64Array): void {
    for (let s = 0; s < house.systems.length; s++) {
      for (const mode of ["heating", "cooling"] as const) {
        const places = efficiencyAt[s]![mode];
        if (!places) continue;
        out[places[offset]!] = state.systems[s]!.modes[mode]!.designEfficiency;
        out[places[offset + 1]!] = state.systems[s]!.modes[mode]!.seasonalEfficiency;
      }
    }
  }

  /** Power of cooling on the design day: run time needed times input, blower included. */
  function peakKW(state: HouseState, parameters: Float64Array): number {
    const { coolingF } = house.loads.indoor;
    const { needLeftAt, inputLeftAt } = house.loads.otherMeasures;
    const needPerF = (house.loads.uaBtuPerHF / 0.75) * parameters[needLeftAt.cooling]!;
    const inputLeft = parameters[inputLeftAt.cooling]!;
    const designF = house.designCooling.temperatureF[0]!;
    const need = needPerF * Math.max(0, designF - house.loads.coolingBalanceF);
    let total = 0;
    for (let s = 0; s < house.systems.length; s++) {
      const { cooling, servedShare } = house.systems[s]!;
      if (!cooling || !(coolingF > 0)) continue;
      const rated = parameters[cooling.capacityAt]!;
      const { capacityConstant, capacityPerF, inputConstant, inputPerF } = cooling.lines;
      const capacity = rated * (capacityConstant + capacityPerF * designF);
      const duty = Math.min(1, (need * servedShare) / state.systems[s]!.modes.cooling!.designEfficiency / capacity);
      const inputRatio = (inputConstant + inputPerF * designF) / (inputConstant + inputPerF * CAPACITY_TEST_F);
      const compressorKW =
        (inputLeft * inputRatio * rated) / (PEAK_EER_OF_SEER * parameters[cooling.seerAt]!) / WATTS_PER_KILOWATT;
      total += duty * (compressorKW + state.systems[s]!.blowerPowerW / WATTS_PER_KILOWATT);
    }
    return total;
  }

  function writeLeakage(state: HouseState, parameters: Float64Array, out: Float64Array): void {
    for (const places of leakageAt) for (const place of places) out[place] = 0;
    const add = (scope: number, isSupply: boolean, all: number, outside: number) => {
      const places = leakageAt[scope]!;
      out[places[0]!]! += all;
      out[places[1]!]! += outside;
      out[places[isSupply ? 2 : 3]!]! += outside;
    };
    for (let i = 0; i < house.sites.length; i++) {
      const site = house.sites[i]!;
      const all = state.siteCfm25[i]!;
      const outside = all * parameters[house.places[site.placeIndex]!.toOutsideShareAt]!;
      add(0, site.side === "supply", all, outside);
      add(1 + site.systemIndex, site.side === "supply", all, outside);
      out[siteAt[i]![0]!] = all;
      out[siteAt[i]![1]!] = outside;
      out[siteAt[i]![2]!] = state.siteOperatingCfm[i]!;
    }
    for (let g = 0; g < house.groups.length; g++) {
      const { systemIndexes } = house.groups[g]!;
      let served = 0;
      for (const s of systemIndexes) served += house.systems[s]!.servedShare;
      for (let c = 0; c < CELLS.length; c++) {
        const cfm25 = state.cellCfm25[g]![c]!;
        out[cellAt[g]![c]!] = cfm25;
        const { side, isOutside } = CELLS[c]!;
        for (const s of systemIndexes) {
          const part = (cfm25 * house.systems[s]!.servedShare) / served;
          add(0, side === "supply", part, isOutside ? part : 0);
          add(1 + s, side === "supply", part, isOutside ? part : 0);
        }
      }
    }
    for (let s = 0; s < house.systems.length; s++) {
      const flow = parameters[house.systems[s]!.fanFlowAt]!;
      out[leakageAt[1 + s]![4]!] = flow;
      out[leakageAt[0]![4]!]! += flow;
    }
  }

  function predicted(state: HouseState, parameters: Float64Array, isOutside: boolean): number {
    let total = 0;
    for (let i = 0; i < house.sites.length; i++) {
      const share = isOutside ? parameters[house.places[house.sites[i]!.placeIndex]!.toOutsideShareAt]! : 1;
      total += state.siteCfm25[i]! * share;
    }
    for (let g = 0; g < house.groups.length; g++)
      for (let c = 0; c < CELLS.length; c++) if (!isOutside || CELLS[c]!.isOutside) total += state.cellCfm25[g]![c]!;
    return total;
  }

  /** Charge of the whole house's use of a fuel, before the price itself is drawn. */
  function tariffCharge({ rate, otherUnitsPerMonth }: TariffModel, uses: Float64Array): number {
    let charge = 0;
    for (let month = 0; month < MONTHS_PER_YEAR; month++) {
      const first = slotsPerMonth * month;
      const night = otherUnitsPerMonth + uses[first]!;
      const day = slotsPerMonth > 1 ? uses[first + 1]! : 0;
      const evening = slotsPerMonth > 1 ? uses[first + 2]! : 0;
      charge += monthlyCharge(rate, month, night, day, evening);
    }
    return charge;
  }

  function yearlyCharge(fuel: number, uses: Float64Array, parameters: Float64Array): number {
    const price = parameters[priceAt[fuel]!]!;
    const tariff = tariffs[fuel];
    if (tariff) return price * tariffCharge(tariff, uses);
    let units = 0;
    for (let slot = 0; slot < slots; slot++) units += uses[slot]!;
    return price * units;
  }

  return {
    writeBefore(state, parameters, out) {
      writeLeakage(state, parameters, out);
      writeEfficiency(state, 0, out);
      fillByFuel(state, beforeByFuel);
      writeEnergy(0, beforeByFuel, out);
    },
    writeAfter(planIndex, before, after, parameters, out) {
      fillByFuel(after, byFuel);
      if (planIndex === 0) {
        writeEfficiency(after, 2, out);
        writeEnergy(1, byFuel, out);
      }
      let usd = 0;
      let co2 = 0;
      for (let f = 0; f < FUELS.length; f++) {
        let saved = 0;
        for (let slot = 0; slot < slots; slot++) saved += beforeByFuel[f]![slot]! - byFuel[f]![slot]!;
        const tariff = tariffs[f];
        const price = parameters[priceAt[f]!]!;
        if (tariff) usd += price * (tariffCharge(tariff, beforeByFuel[f]!) - tariffCharge(tariff, byFuel[f]!));
        else usd += saved * price;
        if (planIndex === 0) {
          out[chargeAt[f]![0]!] = yearlyCharge(f, beforeByFuel[f]!, parameters);
          out[chargeAt[f]![1]!] = yearlyCharge(f, byFuel[f]!, parameters);
        }
        co2 += saved * carbonLbPerUnit[f]!;
      }
      const places = planAt[planIndex]!;
      out[places[0]!] = predicted(after, parameters, false);
      out[places[1]!] = predicted(after, parameters, true);
      out[places[2]!] = usd;
      out[places[3]!] = peakKW(before, parameters) - peakKW(after, parameters);
      out[places[4]!] = co2;
      out[places[5]!] = out[places[0]!]! > 0 ? out[places[1]!]! / out[places[0]!]! : 0;
    },
  };
}
