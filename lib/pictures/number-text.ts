import { shownFromStored, shownUnitOf, type UnitSystem } from "#lib/units/display-unit.ts";
import { formatNumber, formatPercent, formatUsd, formatUsdCents } from "#lib/units/format.ts";
import type { Cents, Cfm, Dollars, Fahrenheit, Share } from "#lib/units/quantity.ts";
import type { Language } from "./scene.ts";

const LOCALES: Readonly<Record<Language, string>> = { en: "en-US", es: "es-US" };

/** Numbers as a picture writes them, in the language of the picture. */
export interface NumberText {
  dollars(value: Dollars): string;
  /** Money owed, to the cent. */
  price(value: Cents): string;
  cfm(value: Cfm): string;
  /** A flow as a number of the reader's unit, for an axis. */
  flowNumber(value: Cfm): number;
  /** The same as text, for a column whose head names the unit. */
  flow(value: Cfm): string;
  /** The words of an axis or a column with the reader's unit in place of "(cfm)". */
  withFlowUnit(words: string): string;
  percent(value: Share): string;
  degrees(value: Fahrenheit): string;
  plain(value: number): string;
}

export function numberText(language: Language = "en", system: UnitSystem = "us"): NumberText {
  const locale = LOCALES[language];
  const plain = (value: number) => formatNumber(value, { locale });
  const flowNumber = (value: Cfm) => shownFromStored({ value, unit: "cfm", system });
  const flow = (value: Cfm) => plain(flowNumber(value));
  const flowUnit = shownUnitOf({ unit: "cfm", system });
  const degreeUnit = shownUnitOf({ unit: "°F", system });
  return {
    plain,
    dollars: (value) => formatUsd(value, locale),
    price: (value) => formatUsdCents(value, locale),
    flowNumber,
    flow,
    cfm: (value) => `${flow(value)} ${flowUnit}`,
    withFlowUnit: (words) => words.replace("(cfm)", `(${flowUnit})`),
    percent: (value) => formatPercent(value, locale),
    degrees: (value) =>
      `${formatNumber(shownFromStored({ value, unit: "°F", system }), { locale, significantDigits: 2 })} ${degreeUnit}`,
  };
}
