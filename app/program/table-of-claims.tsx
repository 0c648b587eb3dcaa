import { LinkButton } from "#app/design/button.tsx";
import { DataTable } from "#app/design/data-table.tsx";
import { Disclosure } from "#app/design/worked-out.tsx";
import { CLAIM_COLUMNS } from "#lib/work/claims/claim-columns.ts";
import type { ClaimSearch } from "./claim-filters.tsx";

/** The way to the claims of this list as a table, and what its columns hold. */
export function TableOfClaims({ search }: { search: ClaimSearch }) {
  const { after: _page, ...filter } = search;
  return (
    <>
      <LinkButton variant="secondary" href={`/program/export?${new URLSearchParams(filter)}`} prefetch={false} download>
        Download these claims as CSV
      </LinkButton>
      <Disclosure title="What the columns hold">
        <DataTable
          caption="Columns of the CSV; units stand in their names, numbers to the last digit"
          columns={[{ label: "Column" }, { label: "Holds" }]}
          rows={CLAIM_COLUMNS.map(({ name, means }) => ({ id: name, cells: [<code key="name">{name}</code>, means] }))}
        />
      </Disclosure>
    </>
  );
}
