import type { JobContext } from "../proposal/proposal-context.ts";

const MOST_ROWS = 6;

export interface NextRepair {
  number: number;
  label: string;
  repairId: string;
  title: string;
  cfmPer100Usd: number;
}

/** Repairs of other options at leaks that the chosen one leaves, by cfm for the money: what to do when a retest misses. */
export function nextBestRepairs({ result, chosen, leaks }: JobContext): NextRepair[] {
  const done = new Set(chosen?.measures.map(({ siteId }) => siteId));
  const seen = new Set<string>();
  return result.scope.options
    .flatMap(({ measures }) => measures)
    .filter(({ siteId, priceUsdCents }) => !done.has(siteId) && priceUsdCents > 0)
    .flatMap((measure) => {
      const leak = leaks.find(({ site }) => site.id === measure.siteId);
      if (!leak) return [];
      const { removesCfm25, priceUsdCents, repairId, title } = measure;
      const cfmPer100Usd = (removesCfm25 / priceUsdCents) * 10_000;
      return [{ number: leak.number, label: leak.label, repairId, title, cfmPer100Usd }];
    })
    .sort((a, b) => b.cfmPer100Usd - a.cfmPer100Usd || a.number - b.number)
    .filter(({ number }) => !seen.has(String(number)) && seen.add(String(number)))
    .slice(0, MOST_ROWS);
}
