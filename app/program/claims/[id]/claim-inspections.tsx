import { Button } from "#app/design/button.tsx";
import { Notice } from "#app/design/notice.tsx";
import { TextArea, TextField } from "#app/design/text-field.tsx";
import { Disclosure } from "#app/design/worked-out.tsx";
import { formatNumber } from "#lib/units/format.ts";
import type { InspectionRecord } from "#lib/work/claims/inspect-claim.ts";
import { day } from "../../claim-words.ts";
import styles from "../../program.module.css";
import { inspect } from "./actions.ts";

interface Recorded {
  document: unknown;
  authorId: string;
  createdAt: Date;
}

function InspectionNotice({ recorded, by }: { recorded: Recorded; by: string }) {
  const { claimedCfm25, inspectedCfm25, differenceCfm25, toleranceCfm25, isWithin, note } =
    recorded.document as InspectionRecord;
  const sides = `${formatNumber(inspectedCfm25)} cfm read, ${formatNumber(claimedCfm25)} cfm claimed`;
  return (
    <Notice
      kind={isWithin ? "good" : "info"}
      word={isWithin ? "Agrees" : "To ask about"}
      title={isWithin ? `The two readings agree: ${sides}.` : `The two readings lie apart: ${sides}.`}
    >
      They differ by {formatNumber(Math.abs(differenceCfm25))} cfm; two people with two instruments may differ by{" "}
      {formatNumber(toleranceCfm25)} cfm (95 %).{" "}
      {isWithin ? "" : "A branch that came off since, another part tested or another baseline may explain it. "}
      {note} {by}, {day(recorded.createdAt)}.
    </Notice>
  );
}

/** Readings of an inspector beside the claim, with a tolerance that counts the difference between two people. */
export function ClaimInspections({
  claimId,
  inspections,
  names,
  mayRecord,
}: {
  claimId: string;
  inspections: readonly Recorded[];
  names: ReadonlyMap<string, string>;
  mayRecord: boolean;
}) {
  return (
    <div className={styles.stack}>
      {inspections.length === 0 ? <p>No inspector has been there yet.</p> : null}
      {inspections.map((recorded) => (
        <InspectionNotice
          key={recorded.createdAt.getTime()}
          recorded={recorded}
          by={names.get(recorded.authorId) ?? "The program"}
        />
      ))}
      {mayRecord ? (
        <Disclosure title="Record a reading at the house">
          <form action={inspect}>
            <input type="hidden" name="id" value={claimId} />
            <TextField
              label="Total leakage read, in cubic feet per minute at 25 Pa"
              name="inspectedCfm25"
              inputMode="decimal"
              required
            />
            <TextField
              label="Its standard uncertainty, in percent"
              name="uncertaintyPercent"
              inputMode="decimal"
              defaultValue="4"
              hint="About 4 for one step with a calibrated fan."
              required
            />
            <TextArea label="Note" name="note" rows={2} isOptional />
            <Button type="submit">Record the reading</Button>
          </form>
        </Disclosure>
      ) : null}
    </div>
  );
}
