import { shownUnitOf, type UnitSystem } from "./display-unit.ts";
import { unitText } from "./unit-text.ts";

/** A number with one of the units whose meaning does not hang on the sentence; "1 °F warmer" is a difference. */
const QUANTITY = /(?<![\d/.,])(\d[\d,]*(?:\.\d+)?) (cfm|ft²|ft³|ft|Btu\/h|therms?|gal)(?![\w²³/])/g;

/**
 * A sentence of the engine for a person who reads SI: each quantity keeps its US figure, with the SI one behind it.
 * "At most 66 cfm at 25 Pa" → "At most 66 cfm (31.1 L/s) at 25 Pa". Nothing is rounded twice: the bracket follows from the
 * figure that stands there. Left out: temperatures.
 */
export function sentenceInSystem(sentence: string, system: UnitSystem): string {
  if (system === "us") return sentence;
  const text = unitText(system);
  return sentence.replaceAll(QUANTITY, (whole, digits: string, unit: string) => {
    const value = Number(digits.replaceAll(",", ""));
    return shownUnitOf({ unit, system }) === unit ? whole : `${whole} (${text.quantity(value, unit)})`;
  });
}
