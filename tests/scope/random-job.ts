import { LEAK_KIND_IDS, leakageOfBand, SIZE_BANDS } from "#lib/job/leak-kinds.ts";
import { REACHES } from "#lib/job/leak-site.ts";
import { PLACE_KINDS } from "#lib/job/place.ts";
import type { Place } from "#lib/job/place-schema.ts";
import { PRICE_BOOK_SCHEMA_VERSION, type PriceBook, TAX_BASES } from "#lib/job/price-book-schema.ts";
import { DEMO_PRICE_BOOK } from "#lib/scope/demo-price-book.ts";
import type { SiteFindings } from "#lib/scope/job-scope-problem.ts";
import { seededRandom } from "./random-problem.ts";

/** An invented price book: whole cents, rates in whole hundredths of a percent. */
export function randomBook(seed: number): PriceBook {
  const random = seededRandom(seed * 9973);
  const whole = (low: number, high: number) => Math.floor(low + (high - low + 1) * random());
  return {
    schemaVersion: PRICE_BOOK_SCHEMA_VERSION,
    id: "random",
    versionId: String(seed),
    title: "Random",
    isInvented: true,
    labour: { rateUsdCentsPerHour: whole(1500, 9000), crewCount: whole(1, 4), visitHours: whole(3, 9) },
    travel: { visitUsdCents: whole(0, 6000), travelHours: whole(0, 12) / 8 },
    setUps: PLACE_KINDS.filter(() => random() < 0.6).map((placeKind) => ({
      placeKind,
      labourHours: whole(0, 8) / 8,
      suppliesUsdCents: whole(0, 4000),
    })),
    materials: DEMO_PRICE_BOOK.materials.map((material) => ({
      ...material,
      unitCostUsdCents: whole(1, 5000),
      wasteShare: whole(0, 30) / 100,
    })),
    overheadRate: whole(0, 6000) / 10000,
    marginShare: whole(0, 4500) / 10000,
    taxes: Array.from({ length: whole(0, 3) }, (_, index) => ({
      id: `tax-${index}`,
      title: `Tax ${index}`,
      taxRate: whole(0, 1000) / 10000,
      appliesTo: TAX_BASES[whole(0, 2)]!,
    })),
    minimumUsdCents: whole(0, 300000),
    permits:
      random() < 0.5
        ? []
        : [
            {
              id: "permit",
              title: "Permit",
              feeUsdCents: whole(0, 20000),
              neededFor: random() < 0.5 ? "any-work" : "replaced-duct",
            },
          ],
    testInUsdCents: whole(0, 15000),
    testOutUsdCents: whole(0, 15000),
    rebates: [],
  };
}

export const JOB_PLACES: Place[] = PLACE_KINDS.map((kind) => ({ id: `place-${kind}`, kind }));

/** Invented leaks of every kind and size, with what the stages before would say of them. */
export function randomFindings(seed: number, count: number): SiteFindings[] {
  const random = seededRandom(seed * 31 + 5);
  const pick = <T>(items: readonly T[]): T => items[Math.floor(random() * items.length)]!;
  return Array.from({ length: count }, (_, index) => {
    const kind = pick(LEAK_KIND_IDS);
    const band = pick(SIZE_BANDS);
    const cfm25 = leakageOfBand(kind, band);
    return {
      site: {
        id: `site-${index}`,
        systemId: index % 2 === 0 ? "upstairs" : "downstairs",
        side: pick(["supply", "return"] as const),
        placeId: pick(JOB_PLACES).id,
        kind,
        size: { from: "band" as const, band },
        reach: pick(REACHES),
      },
      cfm25,
      standardUncertaintyCfm25: cfm25 * 0.3,
      toOutsideShare: random(),
      operatingCfm: cfm25 * random(),
      lifetimeValueUsd: cfm25 * 15 * random(),
    };
  });
}
