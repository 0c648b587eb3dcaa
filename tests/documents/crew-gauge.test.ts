import { describe, expect, test } from "vitest";
import { crewSheetView } from "#lib/documents/crew-sheet-view.ts";
import { estimatedExample } from "./estimated-examples.ts";
import { sectionText } from "./view-text.ts";

const FILE = "mixed-crawlspace-retest.json";

/** The check at the end of each place, as the crew reads it. */
async function checksOf(more: object = {}, language: "en" | "es" = "en") {
  const { job, result } = await estimatedExample(FILE);
  const view = crewSheetView({ job: { ...job, ...more }, result, language, isoDate: "2026-11-25" });
  return view.sections.filter(({ id }) => id.startsWith("stage-")).map((section) => sectionText(section).at(-1)!);
}

describe("what the crew's gauge must show", () => {
  test("stands at every check, as fan pressure with the plate that reads it best", async () => {
    const { job, result } = await estimatedExample(FILE);
    const checks = await checksOf();
    expect(checks).toHaveLength(result.retest!.stagedChecks.length);
    const restrictors = job.instruments!.fans![0]!.calibrations;
    checks.forEach((check, index) => {
      const [, pressure, plate] = /gauge then reads: ([\d.,]+) Pa or less with ([^;.]+)/.exec(check)!;
      const row = restrictors.find(
        ({ restrictorLabel, direction }) => restrictorLabel === plate && direction === "pushing",
      )!;
      const fanPressurePa = Number(pressure!.replaceAll(",", ""));
      expect(fanPressurePa).toBeGreaterThanOrEqual(row.minFanPressurePa);
      expect(fanPressurePa).toBeLessThanOrEqual(row.maxFanPressurePa);
      // Q = C · P^n by hand, as the fan's own calibration sheet says it; air of that place is up to 4 % off the standard.
      const flowCfm = row.coefficient * fanPressurePa ** row.exponent;
      const wanted = Math.floor(result.retest!.stagedChecks[index]!.stopBelowCfm25);
      expect(Math.abs(flowCfm / wanted - 1)).toBeLessThan(0.04);
    });
  });

  test("in Spanish too, and not at all where no calibration is there", async () => {
    for (const check of await checksOf({}, "es")) expect(check).toContain("El medidor del ventilador marca entonces");
    for (const check of await checksOf({ instruments: undefined })) expect(check).not.toContain("gauge then reads");
  });
});
