import { readQuantity } from "#app/design/read-quantity.ts";
import { PRICE_BOOK_SCHEMA_VERSION, type PriceBook, priceBookSchema } from "#lib/job/price-book-schema.ts";
import { formatNumber, formatPercent, formatUsdCents } from "#lib/units/format.ts";
import type { PriceDraft, PriceRow } from "./price-draft.ts";
import { PRICE_GROUPS, PRICE_LISTS, type PriceField, type PriceKind } from "./price-fields.ts";

/** What is wrong with one field, by the id that the field has on the page. */
export interface PriceProblem {
  fieldId: string;
  text: string;
}

/** The id of a field on the page: its path, rows by their place. */
export const fieldIdOf = (...path: readonly (string | number)[]): string => path.join("/").replaceAll("/", ".");

/** Digits moved as digits: 7.25 % is 0.0725 and 0.07 dollars are 7 cents, whatever binary makes of them. */
const shifted = (value: number, places: number): number => Number(`${value}e${places}`);

type Read = { value: number | string | undefined } | { problem: string };

function readText({ label, kind, isOptional }: PriceField, text: string): Read {
  const trimmed = text.trim();
  if (trimmed === "") return isOptional ? { value: undefined } : { problem: `Enter: ${label}` };
  if (kind === "text" || kind === "choice") return { value: trimmed };
  const number = readQuantity(trimmed);
  if (number === undefined) return { problem: `${label}: enter a number, such as 1,250 or 24.80` };
  if (kind === "percent") return { value: shifted(number, -2) };
  if (kind !== "money") return { value: number };
  const cents = shifted(number, 2);
  return Number.isInteger(cents) ? { value: cents } : { problem: `${label}: enter dollars and whole cents` };
}

function rebateEntry({
  by,
  amount,
  measure,
  leastRemovedCfm25,
  leastRemovedShare,
  mostLeftCfm25,
  ...rest
}: Entry): Entry {
  const pays =
    by === "flat"
      ? { by, flatUsdCents: amount }
      : by === "cfm25-removed"
        ? { by, eachCfm25UsdCents: amount }
        : { by, priceShare: amount };
  return { ...rest, pays, conditions: { measure, leastRemovedCfm25, leastRemovedShare, mostLeftCfm25 } };
}

type Entry = Record<string, unknown>;

/** An id made from the name, since what a row is called may change and what refers to it must not. */
function newId(title: string, taken: readonly string[]): string {
  const plain = title
    .normalize("NFKD")
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, "-")
    .replaceAll(/^-+|-+$/g, "")
    .slice(0, 40);
  const base = plain === "" ? "entry" : plain;
  const isFree = (id: string) => !taken.includes(id);
  if (isFree(base)) return base;
  return Array.from({ length: taken.length + 1 }, (_, index) => `${base}-${index + 2}`).find(isFree)!;
}

/** The price book that was typed, or everything that is wrong with it. */
export function readPriceDraft(
  draft: PriceDraft,
): { book: Omit<PriceBook, "id" | "versionId"> } | { problems: readonly PriceProblem[] } {
  const problems: PriceProblem[] = [];
  const kinds = new Map<string, { label: string; kind: PriceKind }>();
  const read = (field: PriceField, fieldId: string, text: string) => {
    kinds.set(fieldId, field);
    const answer = readText(field, text);
    if ("value" in answer) return answer.value;
    problems.push({ fieldId, text: answer.problem });
    return undefined;
  };

  const document: Entry = { schemaVersion: PRICE_BOOK_SCHEMA_VERSION, id: "draft", versionId: "draft" };
  document.title = read({ name: "title", label: "Name of the price book", kind: "text" }, "title", draft.title);
  for (const field of PRICE_GROUPS.flatMap(({ fields }) => fields)) {
    const [first, second] = field.name.split("/") as [string, string?];
    const value = read(field, fieldIdOf(field.name), draft.fields[field.name] ?? "");
    if (second === undefined) document[first] = value;
    else document[first] = { ...(document[first] as Entry | undefined), [second]: value };
  }
  for (const { id: listId, fields } of PRICE_LISTS) {
    const rows = draft.lists[listId] ?? [];
    const ids = rows.map(({ id }) => id ?? "");
    document[listId] = rows.map((row, index) => {
      const entry: Entry = Object.fromEntries(
        fields.map((field) => [
          field.name,
          read(kindOfAmount(field, row), fieldIdOf(listId, index, field.name), row[field.name] ?? ""),
        ]),
      );
      if (listId !== "setUps") {
        entry.id = row.id ?? newId(String(entry.title ?? ""), ids);
        ids[index] = String(entry.id);
      }
      return listId === "rebates" ? rebateEntry(entry) : entry;
    });
  }
  problems.push(...samePlaceTwice(draft));
  if (problems.length > 0) return { problems };
  // Through JSON, so that what was left empty is not there at all.
  const parsed = priceBookSchema.safeParse(JSON.parse(JSON.stringify(document)));
  if (!parsed.success) {
    return {
      problems: parsed.error.issues.map((issue) => {
        const fieldId = fieldIdOf(...issue.path.map(String).filter((key) => !NESTED.includes(key))).replace(
          /(flatUsdCents|eachCfm25UsdCents|priceShare)$/,
          "amount",
        );
        return { fieldId, text: sayIssue(issue, kinds.get(fieldId)) };
      }),
    };
  }
  const { id: _id, versionId: _versionId, ...book } = parsed.data;
  return { book };
}

function samePlaceTwice({ lists }: PriceDraft): PriceProblem[] {
  const kinds = lists.setUps.map(({ placeKind }) => placeKind);
  return kinds.flatMap((kind, index) =>
    kinds.indexOf(kind) < index
      ? [{ fieldId: fieldIdOf("setUps", index, "placeKind"), text: "This kind of place is in the list already" }]
      : [],
  );
}

/** What a rebate pays is nested in the price book and flat on the page. */
const NESTED: readonly string[] = ["pays", "conditions"];

/** What a rebate pays is money, or a share of the price. */
function kindOfAmount(field: PriceField, row: PriceRow): PriceField {
  if (field.kind !== "amount") return field;
  return { ...field, kind: row.by === "share-of-price" ? "percent" : "money" };
}

function sayIssue(issue: { message: string }, field: { label: string; kind: PriceKind } | undefined): string {
  const label = field?.label ?? "This entry";
  const limit = (value: number) =>
    field?.kind === "money"
      ? formatUsdCents(value)
      : field?.kind === "percent"
        ? formatPercent(value)
        : formatNumber(value);
  if ("maximum" in issue && typeof issue.maximum === "number") return `${label}: at most ${limit(issue.maximum)}`;
  if ("minimum" in issue && typeof issue.minimum === "number") {
    const isExclusive = "inclusive" in issue && issue.inclusive === false;
    return `${label}: ${isExclusive ? "more than" : "at least"} ${limit(issue.minimum)}`;
  }
  return `${label}: ${issue.message}`;
}
