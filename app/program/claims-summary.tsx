import { DataTable } from "#app/design/data-table.tsx";
import { StatGrid } from "#app/design/stat-block.tsx";
import { Disclosure } from "#app/design/worked-out.tsx";
import type { ClaimCount } from "#lib/store/repositories/claims.ts";
import { formatPercent, formatUsdCents } from "#lib/units/format.ts";
import { CLAIM_STATE_WORDS, isClaimState } from "./claim-words.ts";

export interface Summary {
  state: ClaimCount[];
  recomputeOutcome: ClaimCount[];
  organizationId: ClaimCount[];
  flagged: number;
}

const plural = (count: number) => (count === 1 ? "claim" : "claims");
const count = (value: number) => value.toLocaleString("en-US");

/** The whole of the claims in a few numbers; by state and by contractor on demand. */
export function ClaimsSummary({
  summary,
  names,
  isProgram,
}: {
  summary: Summary;
  names: ReadonlyMap<string, string>;
  isProgram: boolean;
}) {
  const of = (list: readonly ClaimCount[], ...wanted: readonly string[]) =>
    list.filter(({ name }) => wanted.includes(name)).reduce((sum, { claims }) => sum + claims, 0);
  const total = summary.state.reduce((sum, { claims }) => sum + claims, 0);
  const rebates = summary.state
    .filter(({ name }) => name !== "withdrawn" && name !== "declined")
    .reduce((sum, { rebateUsdCents }) => sum + rebateUsdCents, 0);
  const waiting = isProgram ? of(summary.state, "submitted", "in_review") : of(summary.state, "question_open");
  const same = of(summary.recomputeOutcome, "same");
  const recomputed = total - of(summary.recomputeOutcome, "not-yet");
  return (
    <>
      <StatGrid
        stats={[
          { id: "all", label: isProgram ? "Received" : "Handed in", value: count(total), unit: plural(total) },
          { id: "waiting", label: "Waiting for you", value: count(waiting), unit: plural(waiting) },
          {
            id: "same",
            label: "Recomputed to the same numbers",
            value: recomputed === 0 ? "none" : formatPercent(same / recomputed),
            doubt: `${count(recomputed)} of ${count(total)} recomputed`,
          },
          {
            id: "flagged",
            label: "With something to ask about",
            value: count(summary.flagged),
            unit: plural(summary.flagged),
          },
          {
            id: "approved",
            label: "Approved or paid",
            value: count(of(summary.state, "approved", "paid")),
            unit: plural(of(summary.state, "approved", "paid")),
          },
          { id: "rebates", label: "Rebates asked for", value: formatUsdCents(rebates) },
        ]}
      />
      <Disclosure title="By state and by contractor">
        <DataTable
          caption="Claims by state"
          columns={[{ label: "State" }, { label: "Claims", isNumeric: true }, { label: "Rebates", isNumeric: true }]}
          rows={summary.state.map(({ name, claims, rebateUsdCents }) => ({
            id: name,
            cells: [isClaimState(name) ? CLAIM_STATE_WORDS[name] : name, count(claims), formatUsdCents(rebateUsdCents)],
          }))}
        />
        <DataTable
          caption="Claims by contractor"
          columns={[
            { label: "Contractor" },
            { label: "Claims", isNumeric: true },
            { label: "Rebates", isNumeric: true },
          ]}
          rows={summary.organizationId.map(({ name, claims, rebateUsdCents }) => ({
            id: name,
            cells: [names.get(name) ?? "Another contractor", count(claims), formatUsdCents(rebateUsdCents)],
          }))}
        />
      </Disclosure>
    </>
  );
}
