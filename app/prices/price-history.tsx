import Link from "next/link";
import { DataTable } from "#app/design/data-table.tsx";
import type { MemberRecord } from "#lib/store/repositories/organizations.ts";
import type { PriceBookRecord } from "#lib/store/repositories/price-books.ts";
import { priceChanges } from "./price-changes.ts";

/** Every version, newest first: from when, by whom, and what it changed. */
export function PriceHistory({
  versions,
  members,
}: {
  versions: readonly PriceBookRecord[];
  members: readonly MemberRecord[];
}) {
  return (
    <section aria-labelledby="history">
      <h2 id="history">History</h2>
      <DataTable
        caption="Versions of the price book"
        isCaptionHidden
        isCardsWhenNarrow
        columns={[{ label: "Version" }, { label: "In force from" }, { label: "By" }, { label: "What changed" }]}
        rows={versions.map((version, index) => {
          const before = versions[index + 1];
          return {
            id: String(version.version),
            cells: [
              <Link key="link" href={`/prices/${version.version}`}>
                Version {version.version}
              </Link>,
              version.book.issuedOn,
              members.find(({ id }) => id === version.authorId)?.name ?? "somebody who left",
              before ? <Changes key="changes" before={before} after={version} /> : "The first one",
            ],
          };
        })}
      />
    </section>
  );
}

const MOST_SHOWN = 8;

function Changes({ before, after }: { before: PriceBookRecord; after: PriceBookRecord }) {
  const changes = priceChanges(before.book, after.book);
  if (changes.length === 0) return "Nothing but the date";
  const rest = changes.length - MOST_SHOWN;
  return (
    <ul>
      {changes.slice(0, MOST_SHOWN).map(({ what, before: from, after: to }) => (
        <li key={what}>
          {what}: {from || "not set"} → {to || "removed"}
        </li>
      ))}
      {rest > 0 ? <li>and {rest} more</li> : null}
    </ul>
  );
}
