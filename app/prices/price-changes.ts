import type { PriceBook } from "#lib/job/price-book-schema.ts";
import { draftOf, type PriceRow } from "./price-draft.ts";
import { PRICE_GROUPS, PRICE_LISTS, PRICE_UNITS, type PriceField, shortLabel } from "./price-fields.ts";

/** One value that differs between two versions, in the words of the form; empty where it was not there. */
export interface PriceChange {
  what: string;
  before: string;
  after: string;
}

const nameOf = (row: PriceRow, fields: readonly PriceField[]): string => {
  const first = fields[0]!;
  const value = row[first.name] ?? "";
  return first.options?.find((option) => option.value === value)?.label ?? value;
};

/** A typed value with its unit, as it stands in a table. */
export function shownText({ kind, options }: PriceField, text: string): string {
  if (text === "") return "";
  if (kind === "money") return `$${text}`;
  if (kind === "amount") return /^\d+\.\d{2}$/.test(text) ? `$${text}` : `${text} %`;
  if (kind === "choice") return options?.find(({ value }) => value === text)?.label ?? text;
  return [text, PRICE_UNITS[kind]].filter(Boolean).join(" ");
}

/** Rows keep their id; places of the set-up are their own. */
const keyOf = (row: PriceRow): string => row.id ?? row.placeKind ?? "";

/** What changed from one version of a price book to the next. */
export function priceChanges(before: PriceBook, after: PriceBook): PriceChange[] {
  const [was, is] = [draftOf(before, ""), draftOf(after, "")];
  const changes: PriceChange[] = [];
  const note = (what: string, field: PriceField, from: string, to: string) => {
    if (from !== to) changes.push({ what, before: shownText(field, from), after: shownText(field, to) });
  };
  note("Name", { name: "title", label: "Name", kind: "text" }, was.title, is.title);
  for (const field of PRICE_GROUPS.flatMap(({ fields }) => fields)) {
    note(shortLabel(field), field, was.fields[field.name] ?? "", is.fields[field.name] ?? "");
  }
  for (const { id, entry, fields } of PRICE_LISTS) {
    const keys = [...new Set([...was.lists[id], ...is.lists[id]].map(keyOf))];
    for (const key of keys) {
      const from = was.lists[id].find((row) => keyOf(row) === key);
      const to = is.lists[id].find((row) => keyOf(row) === key);
      if (!from || !to) {
        const name = nameOf((to ?? from)!, fields);
        changes.push({ what: `${entry} “${name}”`, before: from ? "there" : "", after: to ? "there" : "" });
        continue;
      }
      for (const field of fields) {
        note(`${nameOf(to, fields)}: ${shortLabel(field)}`, field, from[field.name] ?? "", to[field.name] ?? "");
      }
    }
  }
  return changes;
}
