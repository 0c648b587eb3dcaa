import type { FanDirection, Gauge, TestFan } from "#lib/job/instrument-schema.ts";

/**
 * Invented instruments for demonstrations and the practice house. No fan like this was ever made: the curves are round
 * numbers chosen so that neighboring flow restrictors overlap.
 */
const RESTRICTORS = [
  { restrictorId: "open", restrictorLabel: "Open fan", coefficient: 100 },
  { restrictorId: "wide", restrictorLabel: "Wide restrictor", coefficient: 44 },
  { restrictorId: "middle", restrictorLabel: "Middle restrictor", coefficient: 19 },
  { restrictorId: "narrow", restrictorLabel: "Narrow restrictor", coefficient: 8 },
  { restrictorId: "slim", restrictorLabel: "Slim restrictor", coefficient: 3.5 },
] as const;

/** The straightened air of a pulling fan passes a little less freely: 4 % less flow at the same fan pressure. */
const COEFFICIENT_FACTOR: Readonly<Record<FanDirection, number>> = { pushing: 1, pulling: 0.96 };

export const DEMO_FAN: TestFan = {
  id: "demo-fan",
  name: "Demonstration fan (invented)",
  isInvented: true,
  calibrations: (["pushing", "pulling"] as const).flatMap((direction) =>
    RESTRICTORS.map(({ restrictorId, restrictorLabel, coefficient }) => ({
      restrictorId,
      restrictorLabel,
      direction,
      coefficient: coefficient * COEFFICIENT_FACTOR[direction],
      exponent: 0.5,
      minFanPressurePa: 25,
      maxFanPressurePa: 250,
    })),
  ),
  flowAccuracyShare: 0.05,
  needsFlowStraightenerWhenPulling: true,
  tapReference: { pushing: "air-around-fan", pulling: "duct-side-air" },
  restrictorSide: "inlet",
  calibrationDate: "2026-03-02",
  calibrationDueDate: "2028-03-02",
};

export const DEMO_GAUGE: Gauge = {
  id: "demo-gauge",
  name: "Demonstration gauge (invented)",
  isInvented: true,
  accuracyShare: 0.01,
  accuracyPa: 0.25,
  resolutionPa: 0.1,
  calibrationDate: "2026-03-02",
  calibrationDueDate: "2027-03-02",
};
