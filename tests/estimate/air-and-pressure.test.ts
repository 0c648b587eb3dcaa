import { describe, expect, it } from "vitest";
import { estimate } from "#lib/estimate/estimate.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";
import { expectClose } from "#tests/expect-close.ts";
import { exampleDocument } from "./example-jobs.ts";

const HEAT_PUMP = "mixed-crawlspace-retest.json";

async function answerOf(change: (job: Job) => unknown): Promise<Result> {
  const job = parseJob(change(parseJob(exampleDocument(HEAT_PUMP))));
  return estimate(job, await loadReferenceData(job));
}

const firstSystem = (job: Job, part: object) => ({
  ...job,
  systems: job.systems.map((system, index) => (index === 0 ? { ...system, ...part } : system)),
});

describe("what leaks do beyond energy", () => {
  it("derived: the house pressure is what the shell needs to pass the air that the ducts do not balance", async () => {
    const cfm50 = 2400;
    const result = await answerOf((job) => ({ ...job, house: { ...job.house, envelopeLeakageCfm50: cfm50 } }));
    const flowsAt = (when: "before" | "after") => {
      const steps = result.trace.filter(({ id }) => id.startsWith("operating/") && id.endsWith(`/${when}`));
      expect(steps).toHaveLength(result.systems.length);
      return steps.reduce(
        (sum, { outputs }) => sum + (outputs.returnToOutsideCfm as number) - (outputs.supplyToOutsideCfm as number),
        0,
      );
    };
    for (const when of ["before", "after"] as const) {
      const netInCfm = flowsAt(when);
      const byHandPa = Math.sign(netInCfm) * 50 * (Math.abs(netInCfm) / cfm50) ** (1 / 0.65);
      expectClose({
        actual: when === "before" ? result.housePressure.beforePa : result.housePressure.afterPa,
        expected: byHandPa,
        relativeTolerance: 1e-9,
        reason: "the same power law, written from its 50 Pa point",
      });
    }
    const tight = await answerOf((job) => ({ ...job, house: { ...job.house, envelopeLeakageCfm50: cfm50 / 2 } }));
    expectClose({
      actual: tight.housePressure.beforePa / result.housePressure.beforePa,
      expected: 2 ** (1 / 0.65),
      relativeTolerance: 1e-9,
      reason: "half the shell leakage under the same flow",
    });
  });

  it("derived: capacity regained in tons is Btu/h over 12,000; resistance heat falls as the ducts tighten", async () => {
    const { systems } = await answerOf((job) => job);
    const { heating } = systems[0]!.distribution;
    expect(heating!.capacity.regainedBtuPerH).toBeGreaterThan(0);
    expectClose({
      actual: heating!.capacity.regainedTons * 12_000,
      expected: heating!.capacity.regainedBtuPerH,
      relativeTolerance: 1e-12,
      reason: "the ton by definition",
    });
    const { beforeKWh, afterKWh, beforeShare, afterShare } = heating!.supplementary!;
    expect(beforeKWh).toBeGreaterThanOrEqual(afterKWh);
    expect(beforeShare).toBeGreaterThanOrEqual(afterShare);
    const short = await answerOf((job) =>
      firstSystem(job, {
        heating: { ...job.systems[0]!.heating!, outputBtuPerH: 0.6 * job.systems[0]!.heating!.outputBtuPerH! },
      }),
    );
    const strips = short.systems[0]!.distribution.heating!.supplementary!;
    expect(strips.beforeShare).toBeGreaterThan(beforeShare);
    expect(strips.beforeKWh).toBeGreaterThan(strips.afterKWh);
    expect(strips.beforeShare).toBeLessThanOrEqual(1);
  });

  it("lists frost, the rated airflow and buried insulation, and each that is told changes the answer", async () => {
    const buried = (job: Job, part: object = {}) =>
      firstSystem(job, {
        runs: job.systems[0]!.runs.map((run, index) => (index === 0 ? { ...run, isBuried: true, ...part } : run)),
      });
    const plain = await answerOf((job) => buried(job));
    const paths = plain.assumptions.map(({ path }) => path);
    expect(paths).toEqual(
      expect.arrayContaining([
        "#/systems/0/heating/frostCapacityFactor",
        "#/systems/0/heating/frostPowerFactor",
        "#/systems/0/blower/ratedCfmPerTon",
        "#/systems/0/runs/0/buriedRValue",
      ]),
    );
    const efficiencyOf = ({ systems }: Result) => systems[0]!.distribution.heating!.seasonalBefore.value;
    expect(efficiencyOf(await answerOf((job) => buried(job, { buriedRValue: 17 })))).toBeGreaterThan(
      efficiencyOf(plain),
    );
    const { energy } = plain;
    const told = async (part: (job: Job) => object) =>
      (await answerOf((job) => ({ ...firstSystem(buried(job) as Job, part(job)), energy: { prefer: "building" } })))
        .energy;
    const asIs = await told(() => ({}));
    const frosty = await told((job) => ({ heating: { ...job.systems[0]!.heating!, frostCapacityFactor: 0.8 } }));
    const lowFlow = await told((job) => ({ blower: { ...job.systems[0]!.blower, ratedCfmPerTon: 500 } }));
    expect(energy.electricity.beforeKWh.value).toBeGreaterThan(0);
    expect(frosty.electricity.beforeKWh.value).toBeGreaterThan(asIs.electricity.beforeKWh.value);
    expect(lowFlow.electricity.beforeKWh.value).not.toBe(asIs.electricity.beforeKWh.value);
  });
});
