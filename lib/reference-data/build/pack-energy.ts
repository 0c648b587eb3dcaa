import { ENERGY_SCHEMA_VERSION, type EnergyTable } from "../table-schemas.ts";
import { numberIn, type Row, textIn } from "./source-rows.ts";

const NATION = "US";
/** Values that the source fills in where a state is not surveyed: the mean of its region or of the nation. */
const OIL_FILLS = new Set([4.289, 4.189, 3.879]);

/** Prices by state, grid factors by subregion, combustion factors by fuel. */
export function packEnergy({
  prices,
  subregions,
  fuels,
}: {
  prices: readonly Row[];
  subregions: readonly Row[];
  fuels: readonly Row[];
}): EnergyTable {
  const states = prices.filter((row) => row.state !== NATION);
  const perUnit = (fuel: string) => {
    const row = fuels.find((each) => each.fuel === fuel);
    if (!row) throw new Error(`No combustion factor of ${fuel}`);
    return numberIn(row, "co2_lb_per_sale_unit");
  };
  return {
    schemaVersion: ENERGY_SCHEMA_VERSION,
    prices: Object.fromEntries(
      states.map((row) => {
        const oil = numberIn(row, "heating_oil_res_heating_season_mean_usd_per_gal");
        return [
          textIn(row, "state"),
          [
            numberIn(row, "elec_res_2023_usd_per_kWh"),
            numberIn(row, "gas_res_latest_annual_2024_25_usd_per_therm"),
            numberIn(row, "propane_res_2026_03_09_usd_per_gal"),
            oil,
            propaneArea(textIn(row, "propane_2026_basis")),
            OIL_FILLS.has(oil) ? "beyond" : "state",
          ],
        ];
      }),
    ),
    electricityNotes: Object.fromEntries(
      states
        .filter((row) => row.elec_source !== "EIA EPA 2023 final")
        .map((row) => [textIn(row, "state"), "a preliminary figure"]),
    ),
    egrid: Object.fromEntries(
      subregions
        .filter((row) => row.subregion !== NATION)
        .map((row) => [
          textIn(row, "subregion"),
          [
            textIn(row, "name"),
            numberIn(row, "egrid2023_rev2_total_co2e_lb_per_MWh"),
            numberIn(row, "egrid2023_jan2025_nonbaseload_co2e_ar5_lb_per_MWh"),
          ],
        ]),
    ),
    fuels: {
      naturalGasLbPerTherm: perUnit("natural_gas"),
      propaneLbPerGallon: perUnit("propane"),
      fuelOilLbPerGallon: perUnit("heating_oil_no2"),
    },
  };
}

function propaneArea(basis: string): "state" | "region" | "nation" {
  if (basis === "state") return "state";
  return basis.startsWith("PADD") ? "region" : "nation";
}
