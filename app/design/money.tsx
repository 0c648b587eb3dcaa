import { formatUsd, formatUsdCents } from "#lib/units/format.ts";
import type { Cents, Dollars } from "#lib/units/quantity.ts";
import styles from "./money.module.css";

/** Money owed, to the cent; or an estimate, as coarse as it is sure. */
export function Money({
  locale,
  isLarge = false,
  ...amount
}: ({ usdCents: Cents } | { estimatedUsd: Dollars }) & { locale?: string; isLarge?: boolean }) {
  const text = "usdCents" in amount ? formatUsdCents(amount.usdCents, locale) : formatUsd(amount.estimatedUsd, locale);
  return <span className={isLarge ? `${styles.money} ${styles.large}` : styles.money}>{text}</span>;
}
