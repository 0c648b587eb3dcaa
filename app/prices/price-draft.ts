import type { PriceBook, Rebate } from "#lib/job/price-book-schema.ts";
import { PRICE_GROUPS, PRICE_LISTS, type PriceField, type PriceKind, type PriceListId } from "./price-fields.ts";

/** One row of a list as it stands in the form; `id` is kept, so that repairs and rebates find it again. */
export type PriceRow = Readonly<Record<string, string>>;

/** A price book as texts, the way it is typed. */
export interface PriceDraft {
  title: string;
  effectiveOn: string;
  /** By path in the price book. */
  fields: Readonly<Record<string, string>>;
  lists: Readonly<Record<PriceListId, readonly PriceRow[]>>;
}

const HUNDRED = 100;
/** Multiplying a share by a hundred leaves dust in the last digit of a double. */
const DIGITS = 12;

/** A stored value as one would have typed it. */
export function typedText(value: unknown, kind: PriceKind): string {
  if (value === undefined) return "";
  if (typeof value !== "number") return String(value);
  if (kind === "money") return (value / HUNDRED).toFixed(2);
  return String(kind === "percent" ? Number((value * HUNDRED).toPrecision(DIGITS)) : value);
}

/** A rebate's nested rule, laid out flat for the form. */
function flatRebate({ pays, conditions, ...rest }: Rebate): Record<string, unknown> {
  const amount =
    pays.by === "flat"
      ? typedText(pays.flatUsdCents, "money")
      : pays.by === "cfm25-removed"
        ? typedText(pays.eachCfm25UsdCents, "money")
        : typedText(pays.priceShare, "percent");
  return { ...rest, ...conditions, by: pays.by, amount };
}

const valueAt = (book: PriceBook, path: string): unknown =>
  path
    .split("/")
    .reduce<unknown>((value, key) => (value as Readonly<Record<string, unknown>> | undefined)?.[key], book);

function rowOf(entry: Readonly<Record<string, unknown>>, fields: readonly PriceField[]): PriceRow {
  return {
    ...(typeof entry.id === "string" ? { id: entry.id } : {}),
    ...Object.fromEntries(fields.map(({ name, kind }) => [name, typedText(entry[name], kind)])),
  };
}

/** The form of a price book. */
export function draftOf(book: PriceBook, effectiveOn: string): PriceDraft {
  const entriesOf = (id: PriceListId): readonly Readonly<Record<string, unknown>>[] =>
    id === "rebates" ? book.rebates.map(flatRebate) : book[id];
  return {
    title: book.title,
    effectiveOn,
    fields: Object.fromEntries(
      PRICE_GROUPS.flatMap(({ fields }) =>
        fields.map(({ name, kind }) => [name, typedText(valueAt(book, name), kind)] as const),
      ),
    ),
    lists: Object.fromEntries(
      PRICE_LISTS.map(({ id, fields }) => [id, entriesOf(id).map((entry) => rowOf(entry, fields))]),
    ) as unknown as PriceDraft["lists"],
  };
}

/** A new row: the first choice of each list of choices, everything else still to be typed. */
export function emptyRow(fields: readonly PriceField[]): PriceRow {
  return Object.fromEntries(fields.map(({ name, options }) => [name, options?.[0]?.value ?? ""]));
}
