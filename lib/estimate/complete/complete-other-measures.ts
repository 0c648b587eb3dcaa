import type { Job } from "#lib/job/job-schema.ts";
import type { ParameterSpace } from "../parameter-space.ts";
import type { Mode } from "../season-bins.ts";

/** What one measure beside the ducts does to each season. */
export interface OtherMeasureModel {
  id: string;
  title: string;
  /** Where its share of a season stands in the job. */
  pointer: Readonly<Record<Mode, string>>;
  isBeforeDucts: boolean;
  /** Of the need, what it leaves; of the input for the same need, likewise. */
  needLeft: Readonly<Record<Mode, number>>;
  inputLeft: Readonly<Record<Mode, number>>;
}

/** The measures in their order, and where the kernel reads what those before the ducts leave. */
export interface OtherMeasures {
  inOrder: readonly OtherMeasureModel[];
  needLeftAt: Readonly<Record<Mode, number>>;
  inputLeftAt: Readonly<Record<Mode, number>>;
}

const MODES = ["heating", "cooling"] as const;

/** What is left of both seasons by a list of measures: their product, whatever their order. */
export function leftBy(measures: readonly OtherMeasureModel[], of: "needLeft" | "inputLeft", mode: Mode): number {
  return measures.reduce((left, measure) => left * measure[of][mode], 1);
}

const both = <Value>(read: (mode: Mode) => Value): Record<Mode, Value> => ({
  heating: read("heating"),
  cooling: read("cooling"),
});

/** One measure from the shares that a job may tell without a list. */
function sharesAsMeasure(plan: Job["plan"]): OtherMeasureModel[] {
  const shares = { heating: plan?.otherHeatingReductionShare ?? 0, cooling: plan?.otherCoolingReductionShare ?? 0 };
  if (!MODES.some((mode) => shares[mode] > 0)) return [];
  const needLeft = both((mode) => 1 - shares[mode]);
  const pointer = {
    heating: "#/plan/otherHeatingReductionShare",
    cooling: "#/plan/otherCoolingReductionShare",
  };
  return [{ id: "other", title: "Other measures", pointer, isBeforeDucts: true, needLeft, inputLeft: both(() => 1) }];
}

/**
 * The other measures of a plan in their order: those told as one share first, then the list; before the ducts, then after
 * them. They are what the person says, so they carry no doubt of their own.
 */
export function completeOtherMeasures({ job, space }: { job: Job; space: ParameterSpace }): OtherMeasures {
  const listed = (job.plan?.otherMeasures ?? []).map(
    (measure, index): OtherMeasureModel => ({
      id: measure.id,
      title: measure.title,
      pointer: both((mode) => `#/plan/otherMeasures/${index}/${mode}ReductionShare`),
      isBeforeDucts: measure.order === "before-ducts",
      needLeft: both((mode) => 1 - (measure[`${mode}ReductionShare`] ?? 0)),
      inputLeft: both(
        (mode) => (measure[`${mode}EfficiencyBeforeRatio`] ?? 1) / (measure[`${mode}EfficiencyAfterRatio`] ?? 1),
      ),
    }),
  );
  const all = [...sharesAsMeasure(job.plan), ...listed];
  const before = all.filter(({ isBeforeDucts }) => isBeforeDucts);
  const place = (of: "needLeft" | "inputLeft") =>
    both((mode) =>
      space.add({
        key: `otherMeasures/${of}/${mode}`,
        group: "loads",
        base: leftBy(before, of, mode),
        spread: { shape: "absolute", standardUncertainty: 0, min: 0, max: 100 },
      }),
    );
  return {
    inOrder: [...before, ...all.filter(({ isBeforeDucts }) => !isBeforeDucts)],
    needLeftAt: place("needLeft"),
    inputLeftAt: place("inputLeft"),
  };
}
