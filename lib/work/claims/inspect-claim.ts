import type { MemberActor } from "#lib/access/actor.ts";
import { requireAllowed } from "#lib/access/can.ts";
import { claimFigures } from "#lib/claims/claim-figures.ts";
import { claimSchema } from "#lib/claims/claim-schema.ts";
import { reinspectionTolerance } from "#lib/claims/sampling/reinspection-tolerance.ts";
import type { Store } from "#lib/store/open-store.ts";
import type { Cfm, Ratio } from "#lib/units/quantity.ts";

/** Standard uncertainty of a claimed reading where the packet tells no range. Source: practice. */
const USUAL_RELATIVE_UNCERTAINTY: Ratio = 0.04;

const PERCENT = 100;

/** An inspector's reading beside the claim, and whether two people and two instruments explain the difference. */
export interface InspectionRecord {
  claimedCfm25: Cfm;
  inspectedCfm25: Cfm;
  inspectedRelativeUncertainty: Ratio;
  differenceCfm25: Cfm;
  toleranceCfm25: Cfm;
  isWithin: boolean;
  note: string;
}

/** Records a reading of the total leakage made by an inspector after the work. The claim itself stays as it is. */
export async function recordInspection(
  store: Store,
  actor: MemberActor,
  {
    claimId,
    inspectedCfm25,
    uncertaintyPercent,
    note,
  }: { claimId: string; inspectedCfm25: Cfm; uncertaintyPercent: number; note: string },
): Promise<void> {
  const inspectedRelativeUncertainty = uncertaintyPercent / PERCENT;
  await store.withOrganization(actor, async ({ claims, claimReview, audit }) => {
    const stored = await claims.find(claimId);
    requireAllowed(actor, "inspection.record", stored);
    const { afterTotalCfm25: claimedCfm25 } = claimFigures(claimSchema.parse(JSON.parse(stored.packet)));
    const { differenceCfm25, toleranceCfm25, isWithin } = reinspectionTolerance({
      claimedCfm25,
      claimedStandardUncertaintyCfm25: claimedCfm25 * USUAL_RELATIVE_UNCERTAINTY,
      inspectedCfm25,
      inspectedStandardUncertaintyCfm25: inspectedCfm25 * inspectedRelativeUncertainty,
    });
    const record: InspectionRecord = {
      claimedCfm25,
      inspectedCfm25,
      inspectedRelativeUncertainty,
      differenceCfm25,
      toleranceCfm25,
      isWithin,
      note: note.trim().slice(0, 4000),
    };
    await claimReview.saveInspection(claimId, record);
    await audit.record({
      action: "claim.inspected",
      subjectKind: "claim",
      subjectId: claimId,
      detail: { inspectedCfm25, isWithin },
      programOrganizationId: stored.organizationId,
    });
  });
}
