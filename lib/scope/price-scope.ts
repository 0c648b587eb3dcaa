import type { PlaceKind } from "#lib/job/place.ts";
import type { PriceBook } from "#lib/job/price-book-schema.ts";
import type { Cents, Hours } from "#lib/units/quantity.ts";
import {
  labourHoursOfVisit,
  labourLine,
  type MaterialUse,
  materialLines,
  type PriceLine,
  setUpLines,
  sumOfLines,
  taxedSum,
  taxOnLine,
  visitLine,
} from "./price-lines.ts";
import { visitsFor } from "./visits.ts";

/** One repair as the price sees it. */
export interface PricedMeasure {
  id: string;
  title: string;
  /** Where it is done; null for work on a whole system, which needs no place to be opened. */
  place: { id: string; kind: PlaceKind; title: string } | null;
  labourHours: Hours;
  materials: readonly MaterialUse[];
  replacesDuct: boolean;
}

export interface ScopePrice {
  priceBookId: string;
  priceBookVersionId: string;
  lines: readonly PriceLine[];
  /** The sum of the lines, to the cent. */
  priceUsdCents: Cents;
  /** Labor and materials of each measure with their tax, without what it shares with others. */
  measures: readonly { id: string; priceUsdCents: Cents; lines: readonly PriceLine[] }[];
  labourHours: Hours;
  visitsCount: number;
}

/** The lines of one measure by itself. */
export function linesOfMeasure(
  book: PriceBook,
  { title, labourHours, materials }: Omit<PricedMeasure, "id">,
): PriceLine[] {
  return [labourLine(book, title, labourHours), ...materialLines(book, title, materials)];
}

/** Permits called for by the work. */
function permitsFor(book: PriceBook, measures: readonly Pick<PricedMeasure, "replacesDuct">[]) {
  return book.permits.filter(
    ({ neededFor }) =>
      measures.length > 0 && (neededFor === "any-work" || measures.some(({ replacesDuct }) => replacesDuct)),
  );
}

const nonZero = (lines: readonly PriceLine[]) => lines.filter(({ amountUsdCents }) => amountUsdCents > 0);

/**
 * The price of some work by a price book, in whole cents.
 * Line = cost × (1 + overhead) ÷ (1 − margin), rounded half up once; tax is rounded once for each line and rule; the
 * price is the sum of the rounded lines. Trips = person hours ÷ hours of a visit, rounded up. What is missing to the
 * least charge is a line of its own. Nothing costs nothing. Source: practice. Left out: rebates, which never lower
 * the price shown (see `rebates.ts`).
 * @throws InputProblem when the price book has no price for a material.
 */
export function priceScope({ book, measures }: { book: PriceBook; measures: readonly PricedMeasure[] }): ScopePrice {
  const base = { priceBookId: book.id, priceBookVersionId: book.versionId };
  if (measures.length === 0)
    return { ...base, lines: [], priceUsdCents: 0, measures: [], labourHours: 0, visitsCount: 0 };
  const perMeasure = measures.map((measure) => ({ id: measure.id, lines: nonZero(linesOfMeasure(book, measure)) }));
  const places = new Map(measures.flatMap(({ place }) => (place ? [[place.id, place] as const] : [])));
  const setUps = [...places.values()].flatMap(({ kind, title }) => setUpLines(book, `Setting up: ${title}`, kind));
  const setUpHours = [...places.values()].reduce(
    (sum, { kind }) => sum + (book.setUps.find(({ placeKind }) => placeKind === kind)?.labourHours ?? 0),
    0,
  );
  const labourHours = measures.reduce((sum, measure) => sum + measure.labourHours, setUpHours);
  const visitsCount = visitsFor(labourHours, labourHoursOfVisit(book));
  const visits = Array.from({ length: visitsCount }, (_, index) =>
    visitLine(book, `Trip ${index + 1} of ${visitsCount}`),
  );
  const tests: PriceLine[] = [
    { kind: "test", title: "Test before the work", amountUsdCents: book.testInUsdCents },
    { kind: "test", title: "Test after the work", amountUsdCents: book.testOutUsdCents },
  ];
  const work = nonZero([...perMeasure.flatMap(({ lines }) => lines), ...setUps, ...visits, ...tests]);
  const missing = Math.max(0, book.minimumUsdCents - sumOfLines(work));
  const leastCharge: PriceLine = { kind: "least-charge", title: "Up to the least charge", amountUsdCents: missing };
  const taxable = nonZero([...work, leastCharge]);
  const permits = permitsFor(book, measures).map(
    ({ title, feeUsdCents }): PriceLine => ({ kind: "permit", title, amountUsdCents: feeUsdCents }),
  );
  const taxes = book.taxes.map((tax): PriceLine => {
    const amountUsdCents = taxable.reduce((sum, line) => sum + taxOnLine(tax, line), 0);
    return { kind: "tax", title: tax.title, amountUsdCents };
  });
  const lines = nonZero([...taxable, ...permits, ...taxes]);
  return {
    ...base,
    lines,
    priceUsdCents: sumOfLines(lines),
    measures: perMeasure.map(({ id, lines: own }) => ({ id, lines: own, priceUsdCents: taxedSum(book, own) })),
    labourHours,
    visitsCount,
  };
}
