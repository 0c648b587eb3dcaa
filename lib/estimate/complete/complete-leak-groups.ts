import { QUARTERS } from "#lib/apportion/measurement-rows.ts";
import { MEASURES, type Measure, type Measurement } from "#lib/measure/measurement.ts";
import type { Ledger } from "../ledger.ts";
import type { ParameterSpace } from "../parameter-space.ts";
import type { SiteModel } from "./complete-sites.ts";
import type { SystemModel } from "./complete-systems.ts";

/** One measured number that the leaks of a group must explain, with the parameters that carry its doubt. */
export interface GroupMeasurement {
  testId: string;
  measure: Measure;
  cfm25: number;
  standardUncertaintyCfm25: number;
  /** Parameters of mean 0 and standard deviation 1 times these ratios move the reading; tests share the fan's. */
  randomAt: number;
  randomRatio: number;
  fanAt: number;
  fanRatio: number;
  exponentAt: number;
  exponentRatio: number;
}

/** Systems whose leaks are reconciled together: one system, or all that only a whole-house test speaks of. */
export interface LeakGroup {
  systemIndexes: readonly number[];
  siteIndexes: readonly number[];
  before: readonly GroupMeasurement[];
  /** Of the retest, when one is in. */
  after: readonly GroupMeasurement[];
  /** Standard normal parameters that move the quarters not yet found. */
  quarterAt: readonly number[];
}

interface Input {
  systems: readonly SystemModel[];
  sites: readonly SiteModel[];
  measurements: readonly Measurement[];
  ledger: Ledger;
  space: ParameterSpace;
}

const AFTER_STAGES: ReadonlySet<Measurement["stage"]> = new Set(["final", "retest"]);

/** Of several tests of one kind, the surest speaks; the others are named. */
function surestOfEach(measurements: readonly Measurement[], ledger: Ledger): Measurement[] {
  return MEASURES.flatMap((measure) => {
    const same = measurements.filter((each) => each.measure === measure);
    if (same.length === 0) return [];
    const best = same.reduce((surest, each) =>
      each.standardUncertaintyCfm25 / each.cfm25 < surest.standardUncertaintyCfm25 / surest.cfm25 ? each : surest,
    );
    for (const other of same) {
      if (other === best) continue;
      ledger.warn({
        code: "several-tests-of-one-kind",
        path: `#/tests/${other.testIndex}`,
        severity: "note",
        what: `“${other.testId}” measures the same as “${best.testId}” and was less sure.`,
        why: "Only the surest of several tests of one kind is used.",
        nextMove:
          "Nothing to do, unless you trust the other one more: then mark this one's stage differently or remove it.",
      });
    }
    return [best];
  });
}

/** Splits tests into before and after the work. Without an existing or rough-in test, a lone final test is the before. */
function splitByStage(measurements: readonly Measurement[]): { before: Measurement[]; after: Measurement[] } {
  const early = measurements.filter((each) => !AFTER_STAGES.has(each.stage) && each.stage !== "during-work");
  const late = measurements.filter((each) => AFTER_STAGES.has(each.stage));
  return early.length > 0
    ? { before: early, after: late }
    : { before: late.filter((each) => each.stage === "final"), after: late.filter((each) => each.stage === "retest") };
}

/** What whole-house tests leave for the systems that were not tested alone: the house's reading less theirs. */
function remainderOf(
  house: readonly Measurement[],
  alone: readonly Measurement[],
  aloneSystems: number,
): Measurement[] {
  if (aloneSystems === 0) return [...house];
  return house.flatMap((whole) => {
    const parts = alone.filter((each) => each.measure === whole.measure);
    if (parts.length !== aloneSystems) return [];
    const cfm25 = whole.cfm25 - parts.reduce((sum, each) => sum + each.cfm25, 0);
    if (!(cfm25 > 0)) return [];
    const scale = whole.cfm25 / cfm25;
    return [
      {
        ...whole,
        cfm25,
        randomRelativeUncertainty:
          scale *
          Math.hypot(
            whole.randomRelativeUncertainty,
            ...parts.map((each) => (each.randomRelativeUncertainty * each.cfm25) / whole.cfm25),
          ),
        standardUncertaintyCfm25: Math.hypot(
          whole.standardUncertaintyCfm25,
          ...parts.map((each) => each.standardUncertaintyCfm25),
        ),
      },
    ];
  });
}

/** Groups the leaks by which tests speak of them. */
export function completeLeakGroups({ systems, sites, measurements, ledger, space }: Input): LeakGroup[] {
  const errors = new Map<string, number>();
  const errorAt = (key: string, shape: "absolute" | "rectangular" = "absolute") => {
    const known = errors.get(key);
    if (known !== undefined) return known;
    const at = space.add({
      key: `instrument/${key}`,
      group: "instrument",
      base: 0,
      spread: { shape, standardUncertainty: 1, min: -4, max: 4 },
    });
    errors.set(key, at);
    return at;
  };
  const toGroup = (measurement: Measurement): GroupMeasurement => ({
    testId: measurement.testId,
    measure: measurement.measure,
    cfm25: measurement.cfm25,
    standardUncertaintyCfm25: measurement.standardUncertaintyCfm25,
    randomAt: errorAt(`test ${measurement.testId}`),
    randomRatio: measurement.randomRelativeUncertainty,
    // A fan's accuracy is a bound.
    fanAt: errorAt(`fan ${measurement.fanKey}`, "rectangular"),
    fanRatio: measurement.fanRelativeUncertainty,
    exponentAt: errorAt("leak exponent"),
    exponentRatio: measurement.exponentRelativeUncertainty,
  });
  const group = (systemIndexes: number[], tests: readonly Measurement[]): LeakGroup => {
    const { before, after } = splitByStage(tests);
    const name = systemIndexes.map((index) => systems[index]!.id).join("+");
    return {
      systemIndexes,
      quarterAt: QUARTERS.map(({ side, outside }) =>
        space.add({
          key: `notYetFound/${name}/${side}/${outside ? "outside" : "inside"}`,
          group: "sites",
          base: 0,
          spread: { shape: "absolute", standardUncertainty: 1, min: -4, max: 4 },
        }),
      ),
      siteIndexes: sites.flatMap((site, index) => (systemIndexes.includes(site.systemIndex) ? [index] : [])),
      before: surestOfEach(before, ledger).map(toGroup),
      after: surestOfEach(after, ledger).map(toGroup),
    };
  };
  const testsOf = (systemId: string) => measurements.filter((each) => each.systemId === systemId);
  const house = measurements.filter((each) => each.systemId === null);
  const alone = systems.flatMap((system, index) => (testsOf(system.id).length > 0 ? [index] : []));
  const pooled = systems.flatMap((_, index) => (alone.includes(index) ? [] : [index]));
  const groups = alone.map((index) => group([index], testsOf(systems[index]!.id)));
  if (pooled.length > 0)
    groups.push(
      group(
        pooled,
        remainderOf(
          house,
          measurements.filter((each) => each.systemId !== null),
          alone.length,
        ),
      ),
    );
  else if (house.length > 0) {
    ledger.warn({
      code: "whole-house-test-beside-system-tests",
      path: `#/tests/${house[0]!.testIndex}`,
      severity: "note",
      what: "A whole-house test stands beside tests of every system alone.",
      why: "The systems' own tests say more, so the whole-house test is not used.",
      nextMove: "Compare it with the sum of the systems' tests.",
    });
  }
  return groups;
}
