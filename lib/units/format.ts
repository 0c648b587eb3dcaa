const LOCALE = "en-US";

/** Formatters are dear to make and cheap to use: one for each form, kept. */
const kept = new Map<string, Intl.NumberFormat>();

function formatter(locale: string, options: Intl.NumberFormatOptions): Intl.NumberFormat {
  const key = `${locale} ${options.style} ${options.maximumFractionDigits} ${options.minimumFractionDigits} ${options.maximumSignificantDigits}`;
  const known = kept.get(key);
  if (known) return known;
  const made = new Intl.NumberFormat(locale, options);
  kept.set(key, made);
  return made;
}

/**
 * A number as people read it: three significant figures below a thousand, whole above. Rounding happens here and
 * nowhere else (money owed once more, by its own rule).
 */
export function formatNumber(
  value: number,
  { locale = LOCALE, significantDigits = 3 }: { locale?: string; significantDigits?: number } = {},
): string {
  const magnitude = Math.abs(value);
  const options: Intl.NumberFormatOptions =
    magnitude >= 1000 ? { maximumFractionDigits: 0 } : { maximumSignificantDigits: significantDigits };
  // Never “-0”.
  return formatter(locale, options).format(magnitude < 1e-12 ? 0 : value);
}

/** Estimated money: whole dollars, from 200 on to the nearest ten, since no estimate is surer than that. */
export function formatUsd(value: number, locale: string = LOCALE): string {
  const rounded = Math.abs(value) >= 200 ? Math.round(value / 10) * 10 : Math.round(value);
  return formatter(locale, { style: "currency", currency: "USD", maximumFractionDigits: 0 }).format(
    rounded === 0 ? 0 : rounded,
  );
}

/** Money owed: exact cents, shown without them when they are zero. */
export function formatUsdCents(cents: number, locale: string = LOCALE): string {
  const hasCents = cents % 100 !== 0;
  return formatter(locale, {
    style: "currency",
    currency: "USD",
    minimumFractionDigits: hasCents ? 2 : 0,
    maximumFractionDigits: hasCents ? 2 : 0,
  }).format(cents / 100);
}

/** A share or ratio as percent, without decimals. */
export function formatPercent(ratio: number, locale: string = LOCALE): string {
  return formatter(locale, { style: "percent", maximumFractionDigits: 0 }).format(ratio);
}
