import type { Credit } from "#lib/estimate/reference-data.ts";

const UNITED_STATES = "United States government work, not under copyright in the United States";

/** Whose data the estimate stands on. Shown wherever the data are shown. */
export const CREDITS: readonly Credit[] = [
  {
    sourceId: "geonames",
    title: "ZIP codes, towns and their elevations",
    text: "Contains data of GeoNames. Changed: joined with climate zones and grid regions; elevations taken from towns.",
    license: "Creative Commons Attribution 4.0 (https://creativecommons.org/licenses/by/4.0/)",
    link: "https://www.geonames.org/",
  },
  {
    sourceId: "nrel-tmy3",
    title: "Typical years",
    text: "Typical Meteorological Year 3, National Solar Radiation Data Base 1991-2005 Update, National Renewable Energy Laboratory (NREL), operated for the US Department of Energy (DOE) by the Alliance for Sustainable Energy. Changed: hours counted in bins.",
    license: "Free use with credit to NREL, DOE and the Alliance; provided as is, without their endorsement",
    link: "https://www.nrel.gov/",
  },
  {
    sourceId: "noaa-normals-1991-2020",
    title: "Climate normals of 1991-2020",
    text: "US Climate Normals 1991-2020, National Centers for Environmental Information, National Oceanic and Atmospheric Administration (NOAA).",
    license: UNITED_STATES,
    link: "https://www.ncei.noaa.gov/",
  },
  {
    sourceId: "eia-prices",
    title: "Energy prices",
    text: "State means of residential prices, US Energy Information Administration (EIA). They hold fixed charges, so what one unit less saves is somewhat lower.",
    license: UNITED_STATES,
    link: "https://www.eia.gov/",
  },
  {
    sourceId: "eia-co2",
    title: "Carbon dioxide of fuels",
    text: "Carbon Dioxide Emissions Coefficients, US Energy Information Administration (EIA). Combustion alone.",
    license: UNITED_STATES,
    link: "https://www.eia.gov/",
  },
  {
    sourceId: "egrid-2023",
    title: "Carbon dioxide of electricity",
    text: "Emissions and Generation Resource Integrated Database, eGRID2023, US Environmental Protection Agency (EPA).",
    license: UNITED_STATES,
    link: "https://www.epa.gov/egrid",
  },
  {
    sourceId: "doe-zones",
    title: "Climate zones",
    text: "Guide to Determining Climate Zone by County, Building America program, US Department of Energy (DOE) and Pacific Northwest National Laboratory (PNNL).",
    license: UNITED_STATES,
    link: "https://www.energy.gov/",
  },
];
