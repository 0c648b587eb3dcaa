import { refuse } from "#lib/errors/input-problem.ts";
import type { PlaceKind } from "#lib/job/place.ts";
import type { PriceBook } from "#lib/job/price-book-schema.ts";
import type { Cents, Hours } from "#lib/units/quantity.ts";
import { roundedCents } from "./exact-money.ts";

export type PriceLineKind = "labour" | "materials" | "visit" | "test" | "least-charge" | "permit" | "tax";

/** One amount that is rounded once. A price is the sum of its lines and nothing else. */
export interface PriceLine {
  kind: PriceLineKind;
  title: string;
  amountUsdCents: Cents;
}

/** How much of a material one repair takes, before waste. */
export interface MaterialUse {
  materialId: string;
  amount: number;
}

/** Selling price of a cost: (1 + overhead) ÷ (1 − margin) times the cost, rounded once. */
function sellingPrice(book: PriceBook, cost: readonly (number | readonly number[])[]): Cents {
  return roundedCents({ factors: [...cost, [1, book.overheadRate]], divisors: [[1, -book.marginShare]] });
}

export function labourLine(book: PriceBook, title: string, labourHours: Hours): PriceLine {
  const amountUsdCents = sellingPrice(book, [labourHours, book.labour.rateUsdCentsPerHour]);
  return { kind: "labour", title, amountUsdCents };
}

/** One line for each material, so that each amount can be followed back to its unit price. */
export function materialLines(book: PriceBook, title: string, materials: readonly MaterialUse[]): PriceLine[] {
  return materials.map(({ materialId, amount }) => {
    const material = book.materials.find(({ id }) => id === materialId);
    if (!material) {
      return refuse({
        field: "#/priceBook/materials",
        detail: `The price book has no price for ${materialId}`,
        fix: "Add the material to the price book, or leave out the repair.",
        code: "missing",
      });
    }
    const amountUsdCents = sellingPrice(book, [amount, [1, material.wasteShare], material.unitCostUsdCents]);
    return { kind: "materials" as const, title: `${title}: ${material.title}`, amountUsdCents };
  });
}

export function setUpLines(book: PriceBook, title: string, placeKind: PlaceKind): PriceLine[] {
  const setUp = book.setUps.find((entry) => entry.placeKind === placeKind);
  if (!setUp) return [];
  const supplies = sellingPrice(book, [setUp.suppliesUsdCents]);
  return [
    labourLine(book, title, setUp.labourHours),
    { kind: "materials", title: `${title}: supplies`, amountUsdCents: supplies },
  ];
}

/** One visit: the vehicle and the paid travel of the whole crew. */
export function visitLine(book: PriceBook, title: string): PriceLine {
  const { crewCount, rateUsdCentsPerHour } = book.labour;
  const crewCents = roundedCents({ factors: [crewCount, book.travel.travelHours, rateUsdCentsPerHour] });
  return { kind: "visit", title, amountUsdCents: sellingPrice(book, [[book.travel.visitUsdCents, crewCents]]) };
}

/** Person hours that a crew does in one visit. */
export const labourHoursOfVisit = ({ labour }: PriceBook): Hours => labour.crewCount * labour.visitHours;

/** The tax on one line of work by one rule, rounded once. Permits are passed on as they are and never come here. */
export function taxOnLine(tax: PriceBook["taxes"][number], line: PriceLine): Cents {
  const isTaxed = tax.appliesTo === "everything" || tax.appliesTo === line.kind;
  return isTaxed ? roundedCents({ factors: [line.amountUsdCents, tax.taxRate] }) : 0;
}

export const sumOfLines = (lines: readonly PriceLine[]): Cents =>
  lines.reduce((sum, { amountUsdCents }) => sum + amountUsdCents, 0);

/** What the customer pays for some lines, with their tax. */
export function taxedSum(book: PriceBook, lines: readonly PriceLine[]): Cents {
  const tax = lines.reduce(
    (sum, line) => sum + book.taxes.reduce((taxes, rule) => taxes + taxOnLine(rule, line), 0),
    0,
  );
  return sumOfLines(lines) + tax;
}
