import { describe, expect, it } from "vitest";
import { estimate } from "#lib/estimate/estimate.ts";
import type { DuctSystem } from "#lib/job/duct-system.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { expectClose } from "#tests/expect-close.ts";
import { exampleWithReference } from "./example-jobs.ts";

type LowStage = NonNullable<NonNullable<DuctSystem["heating"]>["lowStage"]>;
type Staging = "single" | "two-stage" | "variable";

const FURNACE = "cold-attic-furnace.json";
const HEAT_PUMP = "mixed-crawlspace-heat-pump.json";
const KNOWN = {
  [FURNACE]: { heatingNaturalGasTherms: 800, coolingElectricityKWh: 1500 },
  [HEAT_PUMP]: { heatingElectricityKWh: 6000, coolingElectricityKWh: 1500 },
};

async function staged(file: keyof typeof KNOWN, staging: Staging, lowStage?: LowStage, draws = 0): Promise<Result> {
  const { job, reference } = await exampleWithReference(file);
  const chosenMeasures = [{ siteId: job.sites[0]!.id, repairId: "backed-mastic" }];
  const systems = job.systems.map((system) => ({
    ...system,
    heating: system.heating && { ...system.heating, staging, lowStage },
    cooling: system.cooling && { ...system.cooling, staging, lowStage },
  }));
  const changed = { ...job, systems, energy: { knownUse: KNOWN[file] }, plan: { ...job.plan, chosenMeasures } };
  return estimate(changed, reference, { draws });
}

const numbersOf = ({ energy, savings }: Result) => [
  energy.electricity.beforeKWh.value,
  energy.electricity.afterKWh.value,
  energy.naturalGas.beforeTherms.value,
  energy.naturalGas.afterTherms.value,
  savings.costUsdPerYear.value,
  savings.peakKW.value,
];
const ALIKE: LowStage = { capacityRatio: 1, flowRatio: 1, blowerPowerRatio: 1 };
const rounding = { relativeTolerance: 1e-9, reason: "the same sums; the need is searched for to 1e-10" } as const;

function expectSame(one: Result, other: Result): void {
  const expected = numbersOf(other);
  numbersOf(one).forEach((actual, i) => {
    if (expected[i] === 0) expect(actual).toBe(0);
    else expectClose({ actual, expected: expected[i]!, ...rounding });
  });
}

describe("equipment with stages (derived: the ducts at less air and pressure)", () => {
  it.each([FURNACE, HEAT_PUMP] as const)("is that of one stage where the low one is the high one: %s", async (file) => {
    expectSame(await staged(file, "two-stage", { ...ALIKE, loadShare: 0.7 }), await staged(file, "single"));
  });

  it("is that of one stage where the low one meets nothing", async () => {
    expectSame(await staged(FURNACE, "variable", { loadShare: 0 }), await staged(FURNACE, "single"));
  });

  it.each([
    [FURNACE, "heating"],
    [FURNACE, "cooling"],
    [HEAT_PUMP, "heating"],
    [HEAT_PUMP, "cooling"],
  ] as const)("brings less to the rooms the less air the low stage moves: %s, %s", async (file, mode) => {
    const efficiency = async (ratio: number) => {
      const { systems } = await staged(file, "two-stage", { capacityRatio: ratio, flowRatio: ratio });
      return systems[0]!.distribution[mode]!.seasonalBefore.value;
    };
    const [all, most, half] = [await efficiency(1), await efficiency(0.75), await efficiency(0.5)];
    expect(most).toBeLessThan(all);
    expect(half).toBeLessThan(most);
  });

  it.each([FURNACE, HEAT_PUMP] as const)("accounts for every part of the output at both stages: %s", async (file) => {
    const { systems } = await staged(file, "variable");
    for (const mode of ["heating", "cooling"] as const) {
      const { destinationBefore: destination, seasonalBefore } = systems[0]!.distribution[mode]!;
      const { roomsShare, regainedShare, lossesBy } = destination;
      expectClose({ actual: roomsShare + regainedShare, expected: seasonalBefore.value, ...rounding });
      const losses = Object.values(lossesBy).reduce((sum, each) => sum + each, 0);
      expect(roomsShare + regainedShare + losses).toBeCloseTo(1, 9);
    }
  });

  it("lists what is assumed of the low stage, and asks a heat pump for no share of the need", async () => {
    const paths = (result: Result) =>
      result.assumptions.map(({ path }) => path).filter((path) => path.includes("lowStage"));
    const of = (mode: string, keys: readonly string[]) => keys.map((key) => `#/systems/0/${mode}/lowStage/${key}`);
    const KEYS = ["capacityRatio", "flowRatio", "blowerPowerRatio"];
    expect(paths(await staged(FURNACE, "single"))).toEqual([]);
    expect(paths(await staged(FURNACE, "two-stage"))).toEqual([
      ...of("heating", [...KEYS, "loadShare"]),
      ...of("cooling", [...KEYS, "loadShare"]),
    ]);
    expect(paths(await staged(HEAT_PUMP, "two-stage"))).toEqual([
      ...of("heating", KEYS),
      ...of("cooling", [...KEYS, "loadShare"]),
    ]);
  });

  it("has ranges around its values", async () => {
    const { savings } = await staged(FURNACE, "two-stage", undefined, 100);
    expect(savings.costUsdPerYear.p10!).toBeLessThan(savings.costUsdPerYear.p90!);
  });
});

describe("an air conditioner by the outdoor temperature", () => {
  it("uses more in a hot place the more the heat takes of its efficiency", async () => {
    const { job, reference } = await exampleWithReference("hot-humid-two-systems.json");
    const use = async (efficiencyAt95Ratio: number) => {
      const systems = job.systems.map((system) => ({
        ...system,
        cooling: system.cooling && { ...system.cooling, efficiencyAt95Ratio },
      }));
      const result = await estimate({ ...job, systems, energy: { prefer: "building" } }, reference);
      return result.energy.electricity.beforeKWh.value;
    };
    expect(await use(0.76)).toBeGreaterThan(await use(0.88));
  });
});
