import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { priceChanges } from "#app/prices/price-changes.ts";
import { draftOf, emptyRow, type PriceDraft } from "#app/prices/price-draft.ts";
import { PRICE_LISTS, type PriceListId } from "#app/prices/price-fields.ts";
import { readPriceDraft } from "#app/prices/read-price-draft.ts";
import type { PriceBook } from "#lib/job/price-book-schema.ts";
import { DEMO_PRICE_BOOK } from "#lib/scope/demo-price-book.ts";

const draft = draftOf(DEMO_PRICE_BOOK, "2026-11-25");
/** What a saved version gets anew: ids, its day; and it is nobody's invention any more. */
const kept = ({ id: _id, versionId: _v, issuedOn: _on, isInvented: _is, ...book }: PriceBook) => book;

function bookOf(typed: PriceDraft) {
  const read = readPriceDraft(typed);
  if ("problems" in read) throw new Error(JSON.stringify(read.problems));
  return read.book;
}
function problemsOf(typed: PriceDraft) {
  const read = readPriceDraft(typed);
  return "problems" in read ? read.problems : [];
}
const withField = (path: string, text: string): PriceDraft => ({ ...draft, fields: { ...draft.fields, [path]: text } });
const withRow = (list: PriceListId, index: number, more: Record<string, string>): PriceDraft => ({
  ...draft,
  lists: { ...draft.lists, [list]: draft.lists[list].map((row, at) => (at === index ? { ...row, ...more } : row)) },
});

describe("a price book as it is typed", () => {
  test("goes into the form and comes back the same", () => {
    expect(bookOf(draft)).toEqual(kept(DEMO_PRICE_BOOK));
  });

  test("any whole cents and any share in hundredths of a percent come back exactly", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 50_000 }),
        fc.integer({ min: 0, max: 3000 }),
        fc.integer({ min: 0, max: 9000 }),
        (rateUsdCentsPerHour, taxInTenThousandths, marginInTenThousandths) => {
          const book: PriceBook = {
            ...DEMO_PRICE_BOOK,
            labour: { ...DEMO_PRICE_BOOK.labour, rateUsdCentsPerHour },
            taxes: [{ ...DEMO_PRICE_BOOK.taxes[0]!, taxRate: taxInTenThousandths / 10_000 }],
            marginShare: marginInTenThousandths / 10_000,
          };
          expect(bookOf(draftOf(book, ""))).toEqual(kept(book));
        },
      ),
    );
  });

  test("money is dollars and whole cents, with or without comma and sign; percent is moved digit by digit", () => {
    expect(bookOf(withField("minimumUsdCents", "$1,250.50")).minimumUsdCents).toBe(125_050);
    expect(bookOf(withRow("materials", 0, { unitCostUsdCents: "0.07" })).materials[0]!.unitCostUsdCents).toBe(7);
    expect(bookOf(withRow("taxes", 0, { taxRate: "8.875" })).taxes[0]!.taxRate).toBe(0.08875);
    expect(problemsOf(withField("minimumUsdCents", "0.285"))[0]).toMatchObject({ fieldId: "minimumUsdCents" });
  });

  test("what cannot be used is told at its field, in the field's own unit", () => {
    expect(problemsOf(withField("marginShare", "95"))).toEqual([
      { fieldId: "marginShare", text: "Margin as a share of the price, in percent: at most 90%" },
    ]);
    expect(problemsOf(withField("labour/visitHours", ""))).toEqual([
      { fieldId: "labour.visitHours", text: "Enter: Working hours of one visit" },
    ]);
    expect(problemsOf(withRow("materials", 2, { unitCostUsdCents: "-1" }))[0]?.fieldId).toBe(
      "materials.2.unitCostUsdCents",
    );
    expect(problemsOf(withRow("rebates", 0, { by: "share-of-price", amount: "120" }))).toEqual([
      { fieldId: "rebates.0.amount", text: "Amount, in dollars; for a share of the price, in percent: at most 100%" },
    ]);
    expect(problemsOf(withRow("setUps", 1, { placeKind: "attic" }))[0]?.fieldId).toBe("setUps.1.placeKind");
  });

  test("a new row needs its values and gets an id of its own, also beside one of the same name", () => {
    const { fields } = PRICE_LISTS.find(({ id }) => id === "materials")!;
    const typed: PriceDraft = {
      ...draft,
      lists: { ...draft.lists, materials: [...draft.lists.materials, emptyRow(fields)] },
    };
    expect(problemsOf(typed)).toHaveLength(4);
    const filled = { ...emptyRow(fields), title: "Mastic", unit: "gal", unitCostUsdCents: "31", wasteShare: "10" };
    const added = bookOf({ ...typed, lists: { ...draft.lists, materials: [...draft.lists.materials, filled] } });
    expect(added.materials.at(-1)!.id).toBe("mastic-2");
  });
});

describe("what changed between two versions", () => {
  test("is nothing for the same book, and each value in the unit it is typed in", () => {
    expect(priceChanges(DEMO_PRICE_BOOK, DEMO_PRICE_BOOK)).toEqual([]);
    const [mastic, ...others] = DEMO_PRICE_BOOK.materials;
    const next: PriceBook = {
      ...DEMO_PRICE_BOOK,
      marginShare: 0.25,
      materials: [{ ...mastic!, unitCostUsdCents: 3150 }, ...others.slice(1)],
    };
    expect(priceChanges(DEMO_PRICE_BOOK, next)).toEqual([
      { what: "Margin as a share of the price", before: "22 %", after: "25 %" },
      { what: "Mastic: Cost of one unit", before: "$29.00", after: "$31.50" },
      { what: "Material “Glass-fiber mesh tape”", before: "there", after: "" },
    ]);
  });
});
