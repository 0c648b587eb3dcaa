import { canonicalJson } from "./content-hash.ts";

/** A member of a record with its value's canonical text. */
export type CanonicalMember = readonly [name: string, text: string];

/**
 * The members of a record in canonical order, each made canonical once, so that hashes of the whole and of its parts are
 * taken without printing anything twice. Members without a value are left out. Source: RFC 8785 §3.2.3.
 */
export function canonicalMembers(record: object): CanonicalMember[] {
  return Object.entries(record)
    .filter(([, value]) => value !== undefined)
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([name, value]) => [name, canonicalJson(value)]);
}

/** The canonical text of the record that has these members, which are in canonical order. */
export const joinMembers = (members: readonly CanonicalMember[]): string =>
  `{${members.map(([name, text]) => `${JSON.stringify(name)}:${text}`).join(",")}}`;
