import { PLACE_LABELS } from "#lib/job/place.ts";
import type { Place } from "#lib/job/place-schema.ts";
import type { PriceBook } from "#lib/job/price-book-schema.ts";
import { type PriceLine, setUpLines, sumOfLines, taxedSum } from "./price-lines.ts";
import type { SharedCost } from "./scope-problem.ts";

/** What the customer pays for some lines, and what of it counts toward the least charge. */
export function costOf(book: PriceBook, lines: readonly PriceLine[]) {
  return { costUsdCents: taxedSum(book, lines), beforeTaxUsdCents: sumOfLines(lines) };
}

/** What a price book charges once for a job however much is done: opening a place, the tests, the permits. */
export function jobSharedCosts(
  book: PriceBook,
  places: readonly Place[],
  replacingRepairIds: readonly string[],
): SharedCost[] {
  const setUps = places.flatMap((place): SharedCost[] => {
    const setUp = book.setUps.find(({ placeKind }) => placeKind === place.kind);
    if (!setUp) return [];
    const title = `Setting up: ${place.label ?? PLACE_LABELS[place.kind]}`;
    const cost = costOf(book, setUpLines(book, title, place.kind));
    return [
      {
        id: `set-up ${place.id}`,
        title,
        ...cost,
        labourHours: setUp.labourHours,
        neededFor: { kind: "place", placeId: place.id },
      },
    ];
  });
  const tests = [
    { id: "test-in", title: "Test before the work", amountUsdCents: book.testInUsdCents },
    { id: "test-out", title: "Test after the work", amountUsdCents: book.testOutUsdCents },
  ].map(({ id, title, amountUsdCents }): SharedCost => {
    const cost = costOf(book, [{ kind: "test", title, amountUsdCents }]);
    return { id, title, ...cost, labourHours: 0, neededFor: { kind: "any-work" } };
  });
  const permits = book.permits.map(
    ({ id, title, feeUsdCents, neededFor }): SharedCost => ({
      id: `permit ${id}`,
      title,
      costUsdCents: feeUsdCents,
      beforeTaxUsdCents: 0,
      labourHours: 0,
      neededFor: neededFor === "any-work" ? { kind: "any-work" } : { kind: "repairs", repairIds: replacingRepairIds },
    }),
  );
  return [...setUps, ...tests, ...permits].filter((shared) => shared.costUsdCents > 0 || shared.labourHours > 0);
}
