import type { MemberActor } from "#lib/access/actor.ts";
import { requireAllowed } from "#lib/access/can.ts";
import { drawInspectionSample, type InspectionSample } from "#lib/claims/sampling/draw-inspection-sample.ts";
import type { Store } from "#lib/store/open-store.ts";
import { programRuleOn } from "./program-rule-on.ts";

/** A sample as it is kept: the rule it was drawn by, and each claim with its number. */
export interface DrawnSample extends InspectionSample {
  confidenceProbability: number;
  precisionShare: number;
  references: Record<string, string>;
}

/** Draws claims to inspect by the program's rule, in groups by contractor and by whether there is something to ask. */
export async function drawInspections(
  store: Store,
  actor: MemberActor,
  { programId, seed, today }: { programId: string; seed: number; today: Date },
): Promise<void> {
  requireAllowed(actor, "inspection.draw");
  await store.withOrganization(actor, async (scope) => {
    const rule = await programRuleOn(scope, programId, today);
    const names = new Map((await scope.organizations.partners()).map(({ id, name }) => [id, name]));
    const rows = await scope.inspectionSamples.population(programId);
    const sample = drawInspectionSample({
      claims: rows.map(({ id, organizationId, flagCount }) => ({
        id,
        stratum: `${names.get(organizationId) ?? organizationId}, ${flagCount > 0 ? "with" : "without"} questions`,
      })),
      seed,
      ...rule.inspection,
    });
    const drawn = new Set(sample.strata.flatMap(({ claimIds }) => claimIds));
    const references = Object.fromEntries(
      rows.filter(({ id }) => drawn.has(id)).map(({ id, reference }) => [id, reference]),
    );
    const document: DrawnSample = { ...sample, ...rule.inspection, references };
    await scope.inspectionSamples.save({ programId, seed, document });
    await scope.audit.record({
      action: "inspection.drawn",
      subjectKind: "program",
      subjectId: programId,
      detail: { seed, populationCount: sample.populationCount, sampleCount: sample.sampleCount },
    });
  });
}
