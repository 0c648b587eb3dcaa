import type { DuctTest } from "#lib/job/duct-test.ts";
import type { Claim } from "../claim-schema.ts";
import { type ClaimFlag, type FlagEvidence, flag } from "./claim-flag.ts";

/** What a program wants to find in a packet. Each is a rule of the program. */
export interface EvidenceRule {
  photosPerRepairCount: number;
  needsInstruments: boolean;
  needsNames: boolean;
}

/** Where a program says nothing: a photo of each repair, the instruments with their dates, who tested. Source: practice. */
export const USUAL_EVIDENCE: EvidenceRule = { photosPerRepairCount: 1, needsInstruments: true, needsNames: true };

const counts = ({ stage }: DuctTest) => stage === "existing" || stage === "retest" || stage === "final";

function ofTest(test: DuctTest, index: number, rule: EvidenceRule): FlagEvidence[] {
  const path = `#/job/tests/${index}`;
  const fan = "points" in test && test.kind !== "delta-q" && test.points.some((each) => each.fanPressurePa);
  return [
    ...(test.date ? [] : [{ path: `${path}/date`, says: `The test ${test.id} has no date` }]),
    ...(test.time ? [] : [{ path: `${path}/time`, says: `The test ${test.id} has no time of day` }]),
    ...(test.by || !rule.needsNames ? [] : [{ path: `${path}/by`, says: `Nobody is named for the test ${test.id}` }]),
    ...(test.gaugeId || !rule.needsInstruments
      ? []
      : [{ path: `${path}/gaugeId`, says: `No gauge is named for the test ${test.id}` }]),
    ...(test.fanId || !fan ? [] : [{ path: `${path}/fanId`, says: `No test fan is named for the test ${test.id}` }]),
  ];
}

/** What the packet lacks: dates, times, names, instruments with calibration dates, photos of the repairs. */
export function evidenceFlags({ job }: Pick<Claim, "job">, rule: EvidenceRule = USUAL_EVIDENCE): ClaimFlag[] {
  const used = new Set(job.tests.flatMap(({ fanId, gaugeId }) => [fanId ?? "", gaugeId ?? ""]));
  const undated = (["fans", "gauges"] as const).flatMap((list) =>
    (job.instruments?.[list] ?? []).flatMap(({ id, name, calibrationDate, calibrationDueDate }, index) =>
      !used.has(id) || (calibrationDate && calibrationDueDate)
        ? []
        : [{ path: `#/job/instruments/${list}/${index}`, says: `${name} has no calibration dates` }],
    ),
  );
  const repaired = new Set((job.plan?.chosenMeasures ?? []).map(({ siteId }) => siteId));
  const withoutPhoto = job.sites.flatMap(({ id, label, photos }, index) =>
    repaired.has(id) && (photos?.length ?? 0) < rule.photosPerRepairCount
      ? [{ path: `#/job/sites/${index}/photos`, says: `No photo shows the repair of ${label ?? id}` }]
      : [],
  );
  return flag("evidence-missing", [
    ...job.tests.flatMap((test, index) => (counts(test) ? ofTest(test, index, rule) : [])),
    ...(rule.needsInstruments ? undated : []),
    ...withoutPhoto,
  ]);
}
