import { IntlMessageFormat } from "intl-messageformat";
import type { Ranged } from "#lib/job/result/ranged.ts";
import type { Language } from "#lib/pictures/scene.ts";
import { formatNumber, formatPercent, formatUsd, formatUsdCents } from "#lib/units/format.ts";
import { EN, type MessageKey } from "./messages/en.ts";
import { ES } from "./messages/es.ts";

/** Says sentences and numbers in one language. */
export interface Speaker {
  language: Language;
  locale: string;
  say(key: MessageKey, values?: Record<string, string | number>): string;
  /** The message under a key that is put together at run time; undefined where there is none. */
  sayIfKnown(key: string): string | undefined;
  /** Whether a key that is put together at run time has a message. */
  hasMessage(key: string): key is MessageKey;
  number(value: number): string;
  whole(value: number): string;
  /** An estimate of money. */
  usd(value: number): string;
  /** Money owed. */
  cents(value: number): string;
  percent(value: number): string;
  /** A probability as "about 9 in 10" is said: never as sure as 0 or 100 in 100. */
  chance(value: number): string;
  date(isoDate: string): string;
  list(items: readonly string[]): string;
  /** "$310 (could be $190 to $430)" in its two parts. */
  ranged(value: Ranged, format: (value: number) => string): { value: string; doubt?: string };
}

const LOCALES: Readonly<Record<Language, string>> = { en: "en-US", es: "es-US" };
const CATALOGUES: Readonly<Record<Language, Readonly<Record<MessageKey, string>>>> = { en: EN, es: ES };

export function createSpeaker(language: Language): Speaker {
  const locale = LOCALES[language];
  const messages = CATALOGUES[language];
  const formats = new Map<string, IntlMessageFormat>();
  const say = (key: MessageKey, values: Record<string, string | number> = {}): string => {
    let format = formats.get(key);
    if (!format) {
      format = new IntlMessageFormat(messages[key], locale, undefined, { ignoreTag: true });
      formats.set(key, format);
    }
    return String(format.format(values));
  };
  const hasMessage = (key: string): key is MessageKey => Object.hasOwn(messages, key);
  return {
    language,
    locale,
    say,
    sayIfKnown: (key) => (hasMessage(key) ? say(key) : undefined),
    hasMessage,
    number: (value) => formatNumber(value, { locale }),
    whole: (value) => new Intl.NumberFormat(locale, { maximumFractionDigits: 0 }).format(Math.round(value) + 0),
    usd: (value) => formatUsd(value, locale),
    cents: (value) => formatUsdCents(value, locale),
    percent: (value) => formatPercent(value, locale),
    chance(value) {
      const inHundred = Math.round(100 * value);
      if (inHundred >= 100) return say("chance.almostSure");
      if (inHundred <= 0) return say("chance.almostNever");
      return say("chance.about", { count: inHundred });
    },
    date: (isoDate) =>
      new Intl.DateTimeFormat(locale, { dateStyle: "long", timeZone: "UTC" }).format(new Date(`${isoDate}T00:00:00Z`)),
    list: (items) => new Intl.ListFormat(locale, { type: "conjunction" }).format(items),
    ranged({ value, p10, p90 }, format) {
      if (p10 === undefined || p90 === undefined) return { value: format(value) };
      const [low, high] = [format(p10), format(p90)];
      return low === high ? { value: format(value) } : { value: format(value), doubt: say("range", { low, high }) };
    },
  };
}
