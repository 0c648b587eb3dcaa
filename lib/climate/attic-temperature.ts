import { AIR_SPECIFIC_HEAT, MINUTES_PER_HOUR, STANDARD_AIR_DENSITY } from "#lib/air/standard-air.ts";
import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import type { SourcedValue } from "#lib/sources/source.ts";
import type {
  CfmPerSquareFoot,
  Fahrenheit,
  FahrenheitDifference,
  HeatFlux,
  Share,
  ThermalResistance,
  ThermalTransmittance,
} from "#lib/units/quantity.ts";

const practice = { sourceId: "practice", locator: "attics, from memory" } as const;

/** What an attic is like until somebody looks. */
export const ATTIC_DEFAULTS = {
  roofAbsorptance: { value: 0.85, unit: "share", source: practice, low: 0.75, high: 0.92 },
  lightRoofAbsorptance: { value: 0.55, unit: "share", source: practice, low: 0.4, high: 0.65 },
  ceilingRValue: { value: 19, unit: "h·ft²·°F/Btu", source: practice, low: 8, high: 38 },
  roofUValue: { value: 0.5, unit: "Btu/(h·ft²·°F)", source: practice, low: 0.35, high: 0.6 },
  ventilationCfmPerFt2: { value: 0.15, unit: "cfm/ft²", source: practice, low: 0.05, high: 0.35 },
  /** How far a clear night sky cools a roof; 0 under cloud and by day. */
  clearNightCoolingF: { value: 7, unit: "Δ°F", source: practice, low: 4, high: 9 },
  /** Outside film of the sol-air temperature. */
  outsideFilmUValue: { value: 3, unit: "Btu/(h·ft²·°F)", source: practice, low: 2.5, high: 4 },
} as const satisfies Record<string, SourcedValue>;

/** Heat that one cfm carries per °F, Btu/(h·°F): 60 × 0.075 × 0.24 = 1.08. */
const HEAT_PER_CFM = MINUTES_PER_HOUR * STANDARD_AIR_DENSITY.value * AIR_SPECIFIC_HEAT.value;

/**
 * Temperature of a vented attic from a balance over one square foot of it.
 * t_sa = t_out + α I/3.0 − sky; t = (t_in/R + U t_sa + 1.08 v t_out)/(1/R + U + 1.08 v). Valid for hours or longer.
 * Source: derived (steady energy balance); defaults practice. Left out: heat stored in the roof, wind, what ducts leak.
 * @throws InputProblem when a value is impossible or the ceiling has no resistance.
 */
export function atticTemperature({
  outdoorTemperatureF,
  indoorTemperatureF,
  solarBtuPerHFt2 = 0,
  roofAbsorptance = ATTIC_DEFAULTS.roofAbsorptance.value,
  ceilingRValue = ATTIC_DEFAULTS.ceilingRValue.value,
  roofUValue = ATTIC_DEFAULTS.roofUValue.value,
  ventilationCfmPerFt2 = ATTIC_DEFAULTS.ventilationCfmPerFt2.value,
  skyCoolingF = 0,
}: {
  outdoorTemperatureF: Fahrenheit;
  indoorTemperatureF: Fahrenheit;
  solarBtuPerHFt2?: HeatFlux;
  roofAbsorptance?: Share;
  ceilingRValue?: ThermalResistance;
  roofUValue?: ThermalTransmittance;
  ventilationCfmPerFt2?: CfmPerSquareFoot;
  skyCoolingF?: FahrenheitDifference;
}): { atticTemperatureF: Fahrenheit } {
  const temperature = { unit: "°F", low: -80, high: 150 };
  requireBetween({
    field: "outdoorTemperatureF",
    label: "Outdoor temperature",
    value: outdoorTemperatureF,
    ...temperature,
  });
  requireBetween({
    field: "indoorTemperatureF",
    label: "Indoor temperature",
    value: indoorTemperatureF,
    ...temperature,
  });
  requireBetween({ field: "solarBtuPerHFt2", label: "Sun on the roof", value: solarBtuPerHFt2, low: 0, high: 450 });
  requireBetween({ field: "roofAbsorptance", label: "Roof absorptance", value: roofAbsorptance, low: 0, high: 1 });
  requireAbove({ field: "ceilingRValue", label: "Ceiling insulation", value: ceilingRValue });
  requireBetween({ field: "roofUValue", label: "Roof transmittance", value: roofUValue, low: 0.001, high: 5 });
  requireBetween({
    field: "ventilationCfmPerFt2",
    label: "Attic ventilation",
    value: ventilationCfmPerFt2,
    low: 0,
    high: 10,
  });
  requireBetween({
    field: "skyCoolingF",
    label: "Cooling by the night sky",
    value: skyCoolingF,
    unit: "°F",
    low: 0,
    high: 30,
  });
  const solAirF =
    outdoorTemperatureF + (roofAbsorptance * solarBtuPerHFt2) / ATTIC_DEFAULTS.outsideFilmUValue.value - skyCoolingF;
  const ventilationUValue = HEAT_PER_CFM * ventilationCfmPerFt2;
  const gains = indoorTemperatureF / ceilingRValue + roofUValue * solAirF + ventilationUValue * outdoorTemperatureF;
  return { atticTemperatureF: gains / (1 / ceilingRValue + roofUValue + ventilationUValue) };
}
