import type { ReferenceData, ReferenceFigure } from "#lib/estimate/reference-data.ts";
import type { EnergyTable } from "./table-schemas.ts";

const LB_PER_MWH_PER_LB_PER_KWH = 1000;
const FIXED_CHARGES = "A mean that holds fixed charges; the price of one more unit is on the bill.";

/** Residential prices of a state, each with its year and what to know of it. */
export function pricesOf(energy: EnergyTable, state: string): ReferenceData["prices"] {
  const row = energy.prices[state];
  if (!row) throw new Error(`The price table has no state ${state}`);
  const [electricity, naturalGas, propane, fuelOil, propaneArea, oilArea] = row;
  const preliminary = energy.electricityNotes[state];
  const source = { sourceId: "eia-prices" } as const;
  const areas = {
    state: `in ${state}`,
    region: `of the region around ${state}, which is not surveyed itself`,
    nation: `of the United States, as neither ${state} nor its region is surveyed`,
    beyond: `of the region or the nation, as ${state} is not surveyed`,
  };
  return {
    electricityUsdPerKWh: {
      value: electricity,
      unit: "USD/kWh",
      note: `Mean residential price in ${state}, 2023${preliminary ? `, ${preliminary}` : ""}. ${FIXED_CHARGES}`,
      source: { ...source, locator: "Electric Power Annual 2023" },
    },
    naturalGasUsdPerTherm: {
      value: naturalGas,
      unit: "USD/therm",
      note: `Mean price delivered to homes in ${state}, the latest full year there is, 2024 or 2025. ${FIXED_CHARGES}`,
      source: { ...source, locator: "natural gas, residential, at 10.37 therms per thousand cubic feet" },
    },
    propaneUsdPerGallon: {
      value: propane,
      unit: "USD/gal",
      note: `Mean residential price ${areas[propaneArea]}, week of March 9, 2026.`,
      source: { ...source, locator: "Heating Oil and Propane Update" },
    },
    fuelOilUsdPerGallon: {
      value: fuelOil,
      unit: "USD/gal",
      note: `Mean of a heating season ${areas[oilArea]}; the source does not state the year, the level fits winter 2022-23.`,
      source: { ...source, locator: "weekly heating oil prices" },
    },
  };
}

/** What a unit of energy emits, electricity by the grid subregion's average and non-baseload rates. */
export function carbonOf(energy: EnergyTable, subregion: string): ReferenceData["carbon"] {
  const row = energy.egrid[subregion];
  if (!row) throw new Error(`The carbon table has no grid subregion ${subregion}`);
  const [name, averageLbPerMwh, nonBaseloadLbPerMwh] = row;
  const grid = (lbPerMwh: number, note: string, locator: string): ReferenceFigure => ({
    value: lbPerMwh / LB_PER_MWH_PER_LB_PER_KWH,
    unit: "lb/kWh",
    note: `${note} ${name} (${subregion}), 2023, in CO2 equivalents.`,
    source: { sourceId: "egrid-2023", locator },
  });
  const fuel = (value: number, unit: string, what: string): ReferenceFigure => ({
    value,
    unit,
    note: `CO2 from burning ${what}; leaks and transport of the fuel are not counted.`,
    source: { sourceId: "eia-co2", locator: "2016" },
  });
  return {
    electricityAverageLbPerKWh: grid(averageLbPerMwh, "Average of all generation in", "rev 2, total output"),
    electricityNonBaseloadLbPerKWh: grid(
      nonBaseloadLbPerMwh,
      "Plants that follow the load, which saving turns down, in",
      "January 2025 release, non-baseload",
    ),
    naturalGasLbPerTherm: fuel(energy.fuels.naturalGasLbPerTherm, "lb/therm", "natural gas"),
    propaneLbPerGallon: fuel(energy.fuels.propaneLbPerGallon, "lb/gal", "propane"),
    fuelOilLbPerGallon: fuel(energy.fuels.fuelOilLbPerGallon, "lb/gal", "heating oil No. 2"),
  };
}
