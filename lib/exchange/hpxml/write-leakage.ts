import { createLedger } from "#lib/estimate/ledger.ts";
import { readTests } from "#lib/estimate/read-tests.ts";
import type { TestStage } from "#lib/job/duct-test.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import type { Measure, Measurement } from "#lib/measure/measurement.ts";
import type { Cfm, Feet } from "#lib/units/quantity.ts";
import type { Tree } from "./hpxml-ids.ts";
import type { Moment } from "./hpxml-words.ts";

const IS_AFTER: Readonly<Record<TestStage, boolean>> = {
  existing: false,
  "rough-in": false,
  "during-work": false,
  final: true,
  retest: true,
};

const SIDE_AND_EXTENT: Readonly<Record<Measure, { side?: "supply" | "return"; extent: "total" | "to outside" }>> = {
  total: { extent: "total" },
  supply: { side: "supply", extent: "total" },
  return: { side: "return", extent: "total" },
  toOutside: { extent: "to outside" },
  supplyToOutside: { side: "supply", extent: "to outside" },
  returnToOutside: { side: "return", extent: "to outside" },
};

function entry(measure: Measure, cfm25: Cfm, method?: string): Tree {
  const { side, extent } = SIDE_AND_EXTENT[measure];
  return {
    DuctType: side,
    DuctLeakageTestMethod: method,
    DuctLeakage: { Units: "CFM25", Value: Math.max(0, cfm25), TotalOrToOutside: extent },
  };
}

/**
 * Leakage of one duct system at one moment. A value that a test measured names the method; what the estimate found where
 * no test measured stands without one. A test of a whole house with several systems belongs to none of them and is left
 * out, and so is one made while the work went on.
 */
export function writeLeakage({
  job,
  result,
  elevationFt,
  systemId,
  moment,
}: {
  job: Job;
  result: Result;
  elevationFt: Feet;
  systemId: string;
  moment: Moment;
}): Tree[] {
  if (moment === "proposed") return job.systems.length === 1 ? [entry("total", predicted(result))] : [];
  const belongs = (each: Measurement) =>
    (each.systemId === systemId || (each.systemId === null && job.systems.length === 1)) &&
    each.stage !== "during-work" &&
    IS_AFTER[each.stage] === (moment === "after");
  const measured = readTests({ job, elevationFt, ledger: createLedger() }).filter(belongs);
  const entries = measured.map(({ measure, cfm25, methodId }) =>
    entry(measure, cfm25, methodId === "blower-door-subtraction" ? "blower door subtract" : "duct leakage tester"),
  );
  const leakage = result.systems.find(({ id }) => id === systemId)?.leakage;
  if (moment === "after" || !leakage) return entries;
  const estimated: readonly [Measure, Cfm][] = [
    ["total", leakage.totalCfm25.value],
    ["supplyToOutside", leakage.supplyToOutsideCfm25.value],
    ["returnToOutside", leakage.returnToOutsideCfm25.value],
  ];
  const isMeasured = (measure: Measure) => measured.some((each) => each.measure === measure);
  return [
    ...entries,
    ...estimated.filter(([measure]) => !isMeasured(measure)).map(([measure, cfm25]) => entry(measure, cfm25)),
  ];
}

function predicted({ scope }: Result): Cfm {
  const option = scope.options.find(({ id }) => id === scope.chosen) ?? scope.options[0];
  return option?.predictedCfm25.value ?? 0;
}
