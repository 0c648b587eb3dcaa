import { LEAK_KINDS } from "#lib/job/leak-kinds.ts";
import { PLACE_LABELS } from "#lib/job/place.ts";

/** How a unit is said in words, because screen readers skip the short form in the box. */
export const UNIT_WORDS: Readonly<Record<string, string>> = {
  cfm: "in cubic feet per minute",
  Pa: "in pascals",
  ft: "in feet",
  "ft²": "in square feet",
  "ft³": "in cubic feet",
  in: "in inches",
  "°F": "in degrees Fahrenheit",
  "Btu/h": "in Btu per hour",
  "Btu/(h·°F)": "in Btu per hour and degree",
  "h·ft²·°F/Btu": "as R-value",
  kWh: "in kilowatt-hours",
  therm: "in therms",
  gal: "in gallons",
  W: "in watts",
  h: "in hours",
  yr: "in years",
  "%": "in percent",
  $: "in dollars",
  "USD/kWh": "in dollars per kilowatt-hour",
  "USD/therm": "in dollars per therm",
  "USD/gal": "in dollars per gallon",
  "Btu/Wh": "in Btu per watt-hour",
  "cfm/Pa^n": "as in the calibration",
  "L/s": "in liters per second",
  m: "in meters",
  "m²": "in square meters",
  "m³": "in cubic meters",
  mm: "in millimeters",
  "°C": "in degrees Celsius",
  kW: "in kilowatts",
  "W/K": "in watts per kelvin",
  "m²·K/W": "as thermal resistance in SI",
  L: "in liters",
  "USD/L": "in dollars per liter",
  "L/(s·Pa^n)": "as in the calibration, in liters per second",
};

/** How a unit stands in the box beside the number. */
export const SHORT_UNITS: Readonly<Record<string, string>> = {
  "h·ft²·°F/Btu": "R",
  "USD/kWh": "$/kWh",
  "USD/therm": "$/therm",
  "USD/gal": "$/gal",
  therm: "therms",
  "USD/L": "$/L",
  "cfm/Pa^n": "C",
  "L/(s·Pa^n)": "C",
  count: "",
  ratio: "",
  "Btu/Wh": "SEER",
};

/** Ratios that people know as percent. */
export const AS_PERCENT: ReadonlySet<string> = new Set([
  "annualEfficiency",
  "servedFloorShare",
  "coolingHumidityShare",
  "coilMoistureShare",
  "sensibleLoadShare",
  "otherHeatingReductionShare",
  "otherCoolingReductionShare",
  "heatingReductionShare",
  "coolingReductionShare",
  "loadShare",
  "confidenceProbability",
  "targetReductionShare",
  "fuelEscalationRate",
  "discountRate",
  "flowAccuracyShare",
]);

const kindWords = Object.fromEntries(Object.values(LEAK_KINDS).map(({ id, label }) => [id, label]));
const firstLarge = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The words of the choices of the schema, by the last name of the field. */
const CHOICE_WORDS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "house/kind": { "site-built": "Built on site", manufactured: "Manufactured home", multifamily: "Apartment or row" },
  "places/*/kind": Object.fromEntries(Object.entries(PLACE_LABELS).map(([id, label]) => [id, firstLarge(label)])),
  insulation: { none: "Nothing", "floor-or-ceiling": "The floor or ceiling toward the rooms", walls: "Its walls" },
  roofColor: { dark: "Dark", light: "Light" },
  "systems/*/heating/kind": {
    "gas-furnace": "Gas furnace",
    "propane-furnace": "Propane furnace",
    "oil-furnace": "Oil furnace",
    "electric-furnace": "Electric furnace",
    "heat-pump": "Heat pump",
  },
  "systems/*/cooling/kind": { "air-conditioner": "Air conditioner", "heat-pump": "Heat pump" },
  order: { "before-ducts": "Before the ducts", "after-ducts": "After the ducts" },
  staging: { single: "One", "two-stage": "Two", variable: "Variable" },
  fanFlowBasis: {
    "measured-matched-pressure": "Measured, pressures matched with the test fan",
    "measured-temperature-rise": "Measured by temperature rise",
    nameplate: "Read from the nameplate",
    estimated: "Estimated",
  },
  control: { "fixed-speed": "Fixed speed", "constant-flow": "Holds its airflow (variable-speed motor)" },
  side: { supply: "Supply", return: "Return" },
  material: {
    "sheet-metal": "Sheet metal",
    flexible: "Flexible",
    "duct-board": "Duct board",
    "building-cavity": "Building cavity",
  },
  stage: {
    existing: "Before any work",
    "rough-in": "New ducts still open",
    "during-work": "During the work",
    final: "New work finished",
    retest: "Retest after sealing",
  },
  direction: { pushing: "Pushing air in", pulling: "Pulling air out" },
  part: { whole: "All of it", supply: "Supply side only", return: "Return side only" },
  "sites/*/kind": kindWords,
  reach: { easy: "Easy", moderate: "Moderate", hard: "Hard" },
  band: {
    hairline: "Hairline, about 1/32 in",
    "pencil-wide": "As wide as a pencil, about 1/4 in",
    "finger-wide": "As wide as a finger, about 3/4 in",
    "hand-wide": "As wide as a hand, about 3 in",
    "fully-open": "Fully open",
  },
  from: { band: "By eye", gap: "With a tape", estimate: "As a flow" },
  prefer: { bills: "The bills", "known-use": "The yearly use", building: "The building alone" },
  targetMeasure: { total: "Total leakage", "to-outside": "Leakage to outside" },
  objective: {
    "reach-target": "Reach the target at the least price",
    "most-value": "The most value for the homeowner",
    "crew-hours": "The most within the crew's hours",
  },
};

/** What a choice is called: by the whole path where kinds differ, else by the field's own name. */
export function choiceLabel(
  starPath: string,
  value: string,
  otherwise: string = firstLarge(value.replaceAll("-", " ")),
): string {
  const byName = CHOICE_WORDS[starPath.split("/").at(-1) ?? ""];
  return CHOICE_WORDS[starPath]?.[value] ?? byName?.[value] ?? otherwise;
}
