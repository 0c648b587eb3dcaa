import { shownUnitOf, type UnitSystem } from "./display-unit.ts";
import { type UnitText, unitText } from "./unit-text.ts";

const NUMBER = String.raw`(?<![\d/.,])(\d[\d,]*(?:\.\d+)?)`;
/** A number with one of the units whose meaning does not hang on the sentence. */
const QUANTITY = new RegExp(`${NUMBER} (cfm|ft²|ft³|ft|Btu/h|therms?|gal)(?![\\w²³/])`, "g");
/** "By 3.5 °F", "a rise of 50 °F", "1 °F cooler" tell a difference. */
const DIFFERENCE = new RegExp(
  `(?<=(?:\\bby |\\babout |\\brise of )[^.]{0,9})${NUMBER} °F|${NUMBER} °F(?= (?:cool|warm|cold|hott)er)`,
  "g",
);
/** "At 47 °F", "would be 92 °F", "(62 °F)" tell a temperature. */
const TEMPERATURE = new RegExp(`(?<=\\bat |\\bbe |\\()${NUMBER} °F`, "gi");
const BLOWER_POWER = new RegExp(`${NUMBER} W for each cfm`, "g");
/** As a station says how far it is: "12 miles away", "about a mile away". */
const MILES = new RegExp(`${NUMBER} miles\\b|\\babout a mile\\b`, "g");

const numberOf = (digits: string): number => Number(digits.replaceAll(",", ""));

/**
 * A sentence of the engine for a person who reads SI: each quantity keeps its US figure, with the SI one behind it.
 * "At most 66 cfm at 25 Pa" → "At most 66 cfm (31.1 L/s) at 25 Pa". Nothing is rounded twice: the bracket follows from the
 * figure that stands there. Left out: temperatures of which the words do not tell whether they are differences.
 */
export function sentenceInSystem(sentence: string, system: UnitSystem): string {
  if (system === "us") return sentence;
  const text = unitText(system);
  return withTemperatures(sentence, text)
    .replaceAll(QUANTITY, (whole, digits: string, unit: string) =>
      shownUnitOf({ unit, system }) === unit ? whole : `${whole} (${text.quantity(numberOf(digits), unit)})`,
    )
    .replaceAll(MILES, (whole, digits?: string) => `${whole} (${text.quantity(numberOf(digits ?? "1"), "mi")})`)
    .replaceAll(
      BLOWER_POWER,
      (whole, digits: string) => `${whole} (${text.number(numberOf(digits), "W/cfm")} W for each L/s)`,
    );
}

function withTemperatures(sentence: string, text: UnitText): string {
  return sentence
    .replaceAll(DIFFERENCE, (whole, first?: string, second?: string) => {
      return `${whole} (${text.quantity(numberOf(first ?? second ?? ""), "Δ°F")})`;
    })
    .replaceAll(TEMPERATURE, (whole, digits: string) => `${whole} (${text.quantity(numberOf(digits), "°F")})`);
}
