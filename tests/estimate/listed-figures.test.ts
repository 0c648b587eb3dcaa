import { describe, expect, it } from "vitest";
import { estimate } from "#lib/estimate/estimate.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { withValueAt } from "#lib/job/with-value-at.ts";
import { exampleWithReference } from "./example-jobs.ts";

const FURNACE = "cold-attic-furnace.json";
const HEAT_PUMP = "mixed-crawlspace-heat-pump.json";

/** A job that tells so little that the figure is assumed, with the work that the saving is of. */
async function bare(
  file: string,
): Promise<{ job: Job; reference: Awaited<ReturnType<typeof exampleWithReference>>["reference"] }> {
  const { job, reference } = await exampleWithReference(file);
  const { heatingBalanceF: _, coolingBalanceF: __, ...house } = job.house;
  const [site] = job.sites;
  return {
    job: {
      ...job,
      house,
      energy: { prefer: "building" },
      plan: { ...job.plan, chosenMeasures: [{ siteId: site!.id, repairId: "backed-mastic" }] },
    },
    reference,
  };
}

const answerOf = ({ energy, housePressure, sites }: Result) =>
  JSON.stringify([energy, housePressure, sites.map(({ operatingCfm }) => operatingCfm)]);

describe("figures that stood in the calculation alone are listed, and a job may change each", () => {
  it.each([
    [FURNACE, "#/places/0/roofUValue", 0.1],
    [FURNACE, "#/places/0/ventilationCfmPerFt2", 0.6],
    [FURNACE, "#/systems/0/unfoundPressureFraction", 0.9],
    [FURNACE, "#/house/envelopeExponentRatio", 0.55],
    [FURNACE, "#/house/naturalInfiltrationCfm", 200],
    [FURNACE, "#/house/sunGainHeatingBtuPerHFt2", 3],
    [FURNACE, "#/house/sunGainCoolingBtuPerHFt2", 6],
    [FURNACE, "#/house/sensibleLoadShare", 0.95],
    [HEAT_PUMP, "#/systems/0/heating/defrostHeatRatio", 0.08],
  ] as const)("%s %s", async (file, path, value) => {
    const { job, reference } = await bare(file);
    const assumed = await estimate(job, reference);
    const row = assumed.assumptions.find((each) => each.path === path)!;
    expect(row.source.sourceId).toBeTruthy();
    expect(Number(row.low)).toBeLessThan(Number(row.value) + 1e-12);
    expect(Number(row.high)).toBeGreaterThan(Number(row.value));
    const told = await estimate(parseJob(withValueAt(job, path, value)), reference);
    expect(told.assumptions.some((each) => each.path === path)).toBe(false);
    expect(answerOf(told)).not.toBe(answerOf(assumed));
  });
});

describe("the parts of the envelope", () => {
  it("told one by one stand in for the usual construction, and narrow the need by the building", async () => {
    const { job, reference } = await bare(FURNACE);
    const parts = [
      { id: "walls", title: "Walls", areaFt2: 1200, partUValue: 0.1 },
      { id: "lid", title: "Ceiling", areaFt2: 1640, partUValue: 0.03 },
      { id: "floor", title: "Floor", areaFt2: 1640, partUValue: 0.06 },
      { id: "windows", title: "Windows", areaFt2: 220, partUValue: 0.45 },
    ];
    const { naturalInfiltrationCfm: _, envelopeUaBtuPerHF: __, ...house } = job.house;
    const usual = await estimate({ ...job, house }, reference);
    const told = await estimate(parseJob({ ...job, house: { ...house, envelopeParts: parts } }), reference);
    const uaOf = ({ assumptions }: Result) =>
      Number(assumptions.find(({ path }) => path === "#/house/envelopeUaBtuPerHF")!.value);
    const air = Number(usual.assumptions.find(({ path }) => path === "#/house/naturalInfiltrationCfm")!.value);
    // 120 + 49.2 + 98.4 + 99 Btu/(h·°F), and 60 · 0.24 · the density at 980 ft for each cfm.
    expect(Math.abs(uaOf(told) - 366.6 - 60 * 0.24 * 0.0724 * air)).toBeLessThan(1);
    expect(uaOf(told)).toBeLessThan(uaOf(usual));
    const doubt = ({ loads }: Result) => loads.seasons[0]!.evidence[0]!.relativeUncertaintyRatio;
    expect(doubt(told)).toBeLessThan(doubt(usual));
  });
});
