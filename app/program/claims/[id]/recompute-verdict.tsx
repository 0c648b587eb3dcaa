import { Button } from "#app/design/button.tsx";
import { DataTable } from "#app/design/data-table.tsx";
import { Notice, type NoticeKind } from "#app/design/notice.tsx";
import type { RecomputeOutcome } from "#lib/claims/recompute-claim.ts";
import type { ClaimSummary } from "#lib/store/repositories/claims.ts";
import { formatNumber } from "#lib/units/format.ts";
import { day, OUTCOME_WORDS } from "../../claim-words.ts";
import { recheck } from "./actions.ts";

const KINDS: Readonly<Record<RecomputeOutcome["outcome"], NoticeKind>> = {
  same: "good",
  differs: "doubt",
  invalid: "problem",
};

const percent = (ratio: number) => `${formatNumber(ratio * 100)} %`;

function Differences({ outcome }: { outcome: Extract<RecomputeOutcome, { outcome: "differs" }> }) {
  return (
    <DataTable
      caption="Numbers that do not come out the same"
      columns={[
        { label: "Number" },
        { label: "Claimed", isNumeric: true },
        { label: "Recomputed", isNumeric: true },
        { label: "Apart", isNumeric: true },
      ]}
      rows={outcome.differences.map(({ path, which, claimed, recomputed, relativeDifference }) => ({
        id: `${path} ${which}`,
        cells: [
          path,
          claimed === null ? "–" : formatNumber(claimed, { significantDigits: 6 }),
          recomputed === null ? "–" : formatNumber(recomputed, { significantDigits: 6 }),
          percent(relativeDifference),
        ],
      }))}
    />
  );
}

/** Whether the claim comes out the same from its own inputs: the values now, all draws as last stored. */
export function RecomputeVerdict({
  claim,
  outcome,
  hasReadings,
}: {
  claim: ClaimSummary;
  outcome: RecomputeOutcome;
  /** False when the leakage came in a file without its readings: then only the calculation repeats. */
  hasReadings: boolean;
}) {
  const stored = claim.recomputeOutcome ?? "not-yet";
  const when = claim.recomputedAt
    ? `${OUTCOME_WORDS[stored]} with all draws on ${day(claim.recomputedAt)}, engine ${claim.recomputedEngineVersion}.`
    : "Not yet recomputed with all draws.";
  const notes = outcome.outcome === "invalid" ? [] : outcome.notes.filter((note) => note !== "ranges not recomputed");
  return (
    <>
      <Notice
        kind={outcome.outcome === "same" && !hasReadings ? "info" : KINDS[outcome.outcome]}
        title={
          outcome.outcome === "same"
            ? hasReadings
              ? "Every number comes out the same from the readings and the entries of the packet."
              : "The calculation repeats. The leakage itself cannot be recomputed: its readings are not in the packet."
            : outcome.outcome === "differs"
              ? `${outcome.differences.length} numbers do not come out the same.`
              : "The packet cannot be recomputed."
        }
        actions={
          <form action={recheck}>
            <input type="hidden" name="id" value={claim.id} />
            <Button type="submit" variant="secondary">
              Recompute with all draws
            </Button>
          </form>
        }
      >
        {outcome.outcome === "invalid"
          ? outcome.errors.map(({ pointer, detail }) => `${pointer}: ${detail}. `)
          : [when, ...notes.map((note) => `${note}.`)].join(" ")}
      </Notice>
      {outcome.outcome === "differs" ? <Differences outcome={outcome} /> : null}
    </>
  );
}
