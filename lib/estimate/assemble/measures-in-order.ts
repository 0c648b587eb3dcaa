import type { MeasureAtItsTurn, MeasuresInOrder } from "#lib/job/result/measures-result.ts";
import { leftBy, type OtherMeasureModel } from "../complete/complete-other-measures.ts";
import { FUELS, type Fuel } from "../fuels.ts";
import { outputKey } from "../kernel/write-outputs.ts";
import type { AssembleInput } from "./assemble-result.ts";

/** A year's use and cost of heating, cooling and blower. */
interface Year {
  use: Record<Fuel, number>;
  usd: number;
}

/**
 * What each measure saves at its turn, the duct work among them.
 * Measures before the ducts are taken one by one with the ducts as they are, those after with the ducts as they become:
 * each saves the use before it less the use after it, so all of them together are the first use less the last, whatever
 * their order, and no more than the first. Source: derived (telescoping sum). Left out: that a measure may change the
 * ducts' own surroundings, and the load that equipment is sized for. Leaves the kernel as it was.
 */
export function measuresInOrderOf({ house, kernel }: AssembleInput): MeasuresInOrder | null {
  const { inOrder, needLeftAt, inputLeftAt } = house.loads.otherMeasures;
  if (inOrder.length === 0) return null;
  const out = new Float64Array(kernel.layout.keys.length);
  const parameters = house.space.base();
  const yearWith = (done: readonly OtherMeasureModel[], when: "before" | "after"): Year => {
    for (const mode of ["heating", "cooling"] as const) {
      parameters[needLeftAt[mode]] = leftBy(done, "needLeft", mode);
      parameters[inputLeftAt[mode]] = leftBy(done, "inputLeft", mode);
    }
    kernel.evaluate(parameters, out);
    const read = (key: string) => out[kernel.layout.at(key)]!;
    const use = Object.fromEntries(
      FUELS.map((fuel) => [fuel, read(outputKey.energy(fuel, when, "year"))]),
    ) as Year["use"];
    return { use, usd: FUELS.reduce((sum, fuel) => sum + read(outputKey.charge(fuel, when)), 0) };
  };
  const beforeCount = inOrder.filter(({ isBeforeDucts }) => isBeforeDucts).length;
  const turns = [
    ...inOrder.slice(0, beforeCount).map(({ id, title }) => ({ id, title, kind: "measure" as const })),
    { id: "ducts", title: "Duct work", kind: "ducts" as const },
    ...inOrder.slice(beforeCount).map(({ id, title }) => ({ id, title, kind: "measure" as const })),
  ];
  // The year after each turn; the first is that of the house as it is.
  const years = [...Array(turns.length + 1).keys()].map((turn) =>
    turn <= beforeCount ? yearWith(inOrder.slice(0, turn), "before") : yearWith(inOrder.slice(0, turn - 1), "after"),
  );
  kernel.evaluate(house.space.base(), out);
  const saved = (from: Year, to: Year) => ({
    electricityKWh: from.use.electricity - to.use.electricity,
    naturalGasTherms: from.use.naturalGas - to.use.naturalGas,
    propaneGallons: from.use.propane - to.use.propane,
    fuelOilGallons: from.use.fuelOil - to.use.fuelOil,
    costUsdPerYear: from.usd - to.usd,
  });
  return {
    turns: turns.map((turn, k): MeasureAtItsTurn => ({ ...turn, ...saved(years[k]!, years[k + 1]!) })),
    together: saved(years[0]!, years.at(-1)!),
  };
}
