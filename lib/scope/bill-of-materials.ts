import type { PriceBook } from "#lib/job/price-book-schema.ts";
import type { MaterialUse } from "./price-lines.ts";

export interface MaterialToLoad {
  id: string;
  title: string;
  /** With the waste of the price book. */
  amount: number;
  unit: string;
}

/** What to load on the truck: every material of some measures summed, waste included, in the price book's order. */
export function billOfMaterials(
  book: PriceBook,
  measures: readonly { materials: readonly MaterialUse[] }[],
): MaterialToLoad[] {
  const used = measures.flatMap(({ materials }) => materials);
  return book.materials.flatMap(({ id, title, unit, wasteShare }) => {
    const amounts = used.filter(({ materialId }) => materialId === id).map(({ amount }) => amount);
    if (amounts.length === 0) return [];
    return [{ id, title, unit, amount: amounts.reduce((sum, amount) => sum + amount, 0) * (1 + wasteShare) }];
  });
}
