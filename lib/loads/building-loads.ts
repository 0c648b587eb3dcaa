import { requireAbove, requireBetween } from "#lib/errors/require-number.ts";
import { HOURS_PER_DAY } from "#lib/units/conversions.ts";
import type { BtuPerHour, DegreeDays, Fahrenheit, Quantity } from "#lib/units/quantity.ts";

/**
 * Outdoor temperature at which gains alone hold the house at its setting.
 * t_b = t_set − q/UA. Source: derived (steady balance). Left out: heat stored in the house.
 * @throws InputProblem when UA is not above zero or the gains are negative.
 */
export function balanceTemperature({
  setpointF,
  gainsBtuPerH,
  uaBtuPerHF,
}: {
  setpointF: Fahrenheit;
  gainsBtuPerH: BtuPerHour;
  uaBtuPerHF: Quantity<"Btu/(h·°F)">;
}): { balanceF: Fahrenheit } {
  requireAbove({ field: "uaBtuPerHF", label: "Heat loss coefficient", value: uaBtuPerHF, unit: "Btu/(h·°F)" });
  requireBetween({ field: "gainsBtuPerH", label: "Gains", value: gainsBtuPerH, unit: "Btu/h", low: 0, high: 1e6 });
  requireBetween({ field: "setpointF", label: "Thermostat setting", value: setpointF, unit: "°F", low: 40, high: 95 });
  return { balanceF: setpointF - gainsBtuPerH / uaBtuPerHF };
}

/**
 * Heat a house needs, or has to be rid of, month by month, from degree days to its balance temperature.
 * Q = 24·UA·DD; cooling is divided by the sensible share of its load. Source: derived (steady balance).
 * Left out: sun of the single month (the gains are the year's mean), night cooling by opened windows.
 * @throws InputProblem when UA or the sensible share is outside its range.
 */
export function degreeDayLoads({
  uaBtuPerHF,
  monthlyDegreeDays,
  sensibleShare = 1,
}: {
  uaBtuPerHF: Quantity<"Btu/(h·°F)">;
  monthlyDegreeDays: readonly DegreeDays[];
  sensibleShare?: number;
}): { monthlyBtu: number[]; yearlyBtu: number } {
  requireAbove({ field: "uaBtuPerHF", label: "Heat loss coefficient", value: uaBtuPerHF, unit: "Btu/(h·°F)" });
  requireBetween({ field: "sensibleShare", label: "Sensible share", value: sensibleShare, low: 0.3, high: 1 });
  const monthlyBtu = monthlyDegreeDays.map((degreeDays) => (HOURS_PER_DAY * uaBtuPerHF * degreeDays) / sensibleShare);
  return { monthlyBtu, yearlyBtu: monthlyBtu.reduce((sum, each) => sum + each, 0) };
}
