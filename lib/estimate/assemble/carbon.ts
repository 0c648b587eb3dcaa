import type { CarbonAvoided, Savings } from "#lib/job/result/energy-result.ts";
import type { ReferenceData } from "../reference-data.ts";

/**
 * Carbon dioxide avoided, by the plants that follow the load (what saving turns down) and by the grid's average (what a
 * footprint counts). The first is the one in the savings. Source: egrid-2023, eia-co2.
 */
export function carbonOf({ carbon }: ReferenceData, savings: Savings): CarbonAvoided[] {
  const fromFuels =
    savings.naturalGasTherms.value * carbon.naturalGasLbPerTherm.value +
    savings.propaneGallons.value * carbon.propaneLbPerGallon.value +
    savings.fuelOilGallons.value * carbon.fuelOilLbPerGallon.value;
  const rates = [
    { id: "non-baseload", rate: carbon.electricityNonBaseloadLbPerKWh },
    { id: "average", rate: carbon.electricityAverageLbPerKWh },
  ] as const;
  return rates.map(({ id, rate: { value, note, source } }) => ({
    id,
    co2LbPerYear: savings.electricityKWh.value * value + fromFuels,
    electricityLbPerKWh: value,
    note,
    source,
  }));
}
