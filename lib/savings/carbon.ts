import { refuse } from "#lib/errors/input-problem.ts";
import type { SourcedValue } from "#lib/sources/source.ts";
import type { Gallons, KilowattHours, Pounds, Quantity, Therms } from "#lib/units/quantity.ts";

const coefficients = { sourceId: "eia-co2", locator: "coefficients of 2016-02-02, combustion only" } as const;

/** Carbon dioxide from burning one unit of fuel; what leaks on its way to the house is left out. */
export const FUEL_CO2 = {
  naturalGasLbPerTherm: { value: 11.7, unit: "lb/therm", source: coefficients },
  propaneLbPerGallon: { value: 12.7, unit: "lb/gal", source: coefficients },
  fuelOilLbPerGallon: { value: 22.4, unit: "lb/gal", source: coefficients },
} as const satisfies Record<string, SourcedValue>;

/** Energy saved in a year, each in the unit it is sold in; negative where more is used. */
export interface EnergySaved {
  electricityKWh: KilowattHours;
  naturalGasTherms: Therms;
  propaneGallons: Gallons;
  fuelOilGallons: Gallons;
}

/**
 * Carbon dioxide avoided by the energy saved.
 * m = Σ saved × factor. The grid's factor is the caller's: non-baseload for savings, total output for a footprint; the
 * year of the factor is shown with the result. Sources: egrid-2023, eia-co2. Left out: upstream methane.
 * @throws InputProblem when the grid's factor is not 0 to 5 lb/kWh.
 */
export function carbonAvoided({ saved, gridLbPerKWh }: { saved: EnergySaved; gridLbPerKWh: Quantity<"lb/kWh"> }): {
  co2Lb: Pounds;
} {
  if (!(gridLbPerKWh >= 0 && gridLbPerKWh <= 5)) {
    refuse({
      field: "gridLbPerKWh",
      detail: `The grid's carbon must be from 0 to 5 lb/kWh, not ${gridLbPerKWh}`,
      fix: "Enter pounds a kilowatt hour: a published lb/MWh divided by 1,000.",
    });
  }
  return {
    co2Lb:
      saved.electricityKWh * gridLbPerKWh +
      saved.naturalGasTherms * FUEL_CO2.naturalGasLbPerTherm.value +
      saved.propaneGallons * FUEL_CO2.propaneLbPerGallon.value +
      saved.fuelOilGallons * FUEL_CO2.fuelOilLbPerGallon.value,
  };
}
