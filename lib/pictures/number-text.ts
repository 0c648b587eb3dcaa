import { formatNumber, formatPercent, formatUsd } from "#lib/units/format.ts";
import type { Cfm, Dollars, Fahrenheit, Share } from "#lib/units/quantity.ts";
import type { Language } from "./scene.ts";

const LOCALES: Readonly<Record<Language, string>> = { en: "en-US", es: "es-US" };

/** Numbers as a picture writes them, in the language of the picture. */
export interface NumberText {
  dollars(value: Dollars): string;
  cfm(value: Cfm): string;
  percent(value: Share): string;
  degrees(value: Fahrenheit): string;
  plain(value: number): string;
}

export function numberText(language: Language = "en"): NumberText {
  const locale = LOCALES[language];
  const plain = (value: number) => formatNumber(value, { locale });
  return {
    plain,
    dollars: (value) => formatUsd(value, locale),
    cfm: (value) => `${plain(value)} cfm`,
    percent: (value) => formatPercent(value, locale),
    degrees: (value) => `${formatNumber(value, { locale, significantDigits: 2 })} °F`,
  };
}
