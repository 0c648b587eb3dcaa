import type { Leakage } from "#lib/job/result/leakage-result.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { conformanceProbability } from "#lib/retest/conformance-probability.ts";
import { formatNumber, formatUsd } from "#lib/units/format.ts";
import type { ScopeTarget } from "../find-target.ts";
import { outputKey } from "../kernel/write-outputs.ts";
import { rangedOfFunction } from "../output-layout.ts";
import type { AssembleInput } from "./assemble-result.ts";
import { type Evaluated, readRanged } from "./energy.ts";

/** How much less leakage the retest showed, of the leakage that the target limits. */
export function reductionOf(
  { layout, outcome }: Evaluated,
  measure: ScopeTarget["measure"],
): Pick<NonNullable<Result["verified"]>, "differenceCfm25" | "reductionShare"> {
  const isOutside = measure === "to-outside";
  const beforeAt = layout.at(outputKey.leakage("house", isOutside ? "toOutside" : "total"));
  const afterAt = layout.at(outputKey.plan(0, isOutside ? "predictedToOutside" : "predictedTotal"));
  return {
    differenceCfm25: rangedOfFunction(outcome, (read) => read(beforeAt) - read(afterAt)),
    reductionShare: rangedOfFunction(outcome, (read) => (read(beforeAt) > 0 ? 1 - read(afterAt) / read(beforeAt) : 0)),
  };
}

/** What the retest says: the reduction with its doubt, the target, and promise against result by its parts. */
export function verifiedOf(
  { evaluated, predicted, target, house }: AssembleInput,
  leakage: Leakage,
): NonNullable<Result["verified"]> {
  const measure = target?.measure ?? "total";
  const isOutside = measure === "to-outside";
  const after = readRanged(evaluated, outputKey.plan(0, isOutside ? "predictedToOutside" : "predictedTotal"));
  const promised = readRanged(predicted, outputKey.plan(0, isOutside ? "predictedToOutside" : "predictedTotal"));
  const savedNow = readRanged(evaluated, outputKey.plan(0, "savedUsd")).value;
  const savedThen = readRanged(predicted, outputKey.plan(0, "savedUsd")).value;
  const retests = house.groups.flatMap((group) =>
    group.after.filter((each) => each.measure === (isOutside ? "toOutside" : "total")),
  );
  const standardUncertainty = Math.hypot(...retests.map((each) => each.standardUncertaintyCfm25));
  const before = isOutside ? leakage.toOutsideCfm25.value : leakage.totalCfm25.value;
  return {
    ...reductionOf(evaluated, measure),
    probabilityOfMeetingTarget:
      target && standardUncertainty > 0
        ? conformanceProbability({ value: after.value, standardUncertainty, upperLimit: target.limitCfm25 }).probability
        : null,
    explanation: [
      `Before the work ${formatNumber(before)} cfm at 25 Pa; ${formatNumber(promised.value)} were promised, ${formatNumber(after.value)} were reached.`,
      after.value <= promised.value
        ? "The repairs sealed at least as much as was expected."
        : "The repairs left more than was expected.",
      `The saving is now ${formatUsd(savedNow)} a year; ${formatUsd(savedThen)} were promised. The difference comes from the leakage alone: weather, use and prices are held the same.`,
    ],
  };
}
