import { describe, expect, test } from "vitest";
import { QUICK_EQUIPMENT, type QuickAnswers, quickLookDocument } from "#app/quick/quick-look-document.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { usualEquipmentSize } from "#lib/job/usual-equipment-size.ts";
import { loadReferenceData } from "#lib/reference-data/load-server.ts";

const FIVE = {
  zip: "53711",
  floorAreaFt2: 1640,
  placeKind: "attic" as const,
  reading: { ductPressurePa: 25, flowCfm: 290 },
};

describe("five answers make an ordinary job", () => {
  test.each(QUICK_EQUIPMENT.map(({ id }) => id))("with equipment %s it is answered in full", async (equipmentId) => {
    const job = parseJob(quickLookDocument({ ...FIVE, equipmentId }, "2026-11-25"));
    const result = await estimate(job, await loadReferenceData(job));
    // A reading at 25 Pa is the leakage at 25 Pa; leaks that nobody has seen pull by less than half a percent.
    expect(Math.abs(result.leakage.totalCfm25.value / 290 - 1)).toBeLessThan(0.005);
    expect(result.economics.doingNothingUsdPerYear.value).toBeGreaterThan(0);
  });
  test("ducts inside the rooms cost less than the same ducts in the attic", async () => {
    const costs = await Promise.all(
      (["attic", "conditioned"] as const).map(async (placeKind) => {
        const job = parseJob(quickLookDocument({ ...FIVE, placeKind, equipmentId: "gas" }, "2026-11-25"));
        return (await estimate(job, await loadReferenceData(job))).economics.doingNothingUsdPerYear.value;
      }),
    );
    expect(costs[1]).toBeLessThan(costs[0]!);
  });
  test("an open answer is named, never filled in", () => {
    const wrongWithout = (answers: QuickAnswers): string => {
      try {
        parseJob(quickLookDocument(answers, "2026-11-25"));
        return "nothing";
      } catch (thrown) {
        return thrown instanceof InputProblem ? (thrown.errors[0]?.pointer ?? "") : "no input problem";
      }
    };
    const all: QuickAnswers = { ...FIVE, equipmentId: "gas" };
    expect(wrongWithout(all)).toBe("nothing");
    expect(wrongWithout({ ...all, zip: undefined })).toBe("#/house/zip");
    expect(wrongWithout({ ...all, floorAreaFt2: undefined })).toBe("#/house/conditionedFloorAreaFt2");
    expect(wrongWithout({ ...all, equipmentId: undefined })).toMatch(/^#\/systems/);
    expect(wrongWithout({ ...all, reading: { ductPressurePa: 25 } })).toMatch(/^#\/tests\/0/);
  });
});

test("stand-in sizes grow with the floor area and stay within what is sold", () => {
  const sizes = [150, 800, 1640, 3000, 30_000].map((floorAreaFt2) => usualEquipmentSize({ floorAreaFt2 }));
  expect(sizes.map(({ coolingBtuPerH }) => coolingBtuPerH / 12_000)).toEqual([1.5, 1.5, 3, 5, 5]);
  expect(sizes.map(({ heatingBtuPerH }) => heatingBtuPerH)).toEqual([40_000, 40_000, 60_000, 110_000, 120_000]);
  expect(() => usualEquipmentSize({ floorAreaFt2: Number.NaN })).toThrow();
});
