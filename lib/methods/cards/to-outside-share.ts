import { z } from "zod";
import { DUCT_LEAK_EXPONENT } from "#lib/air/flow-at-pressure.ts";
import { toOutsideShare } from "#lib/apportion/to-outside-share.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const derived = { sourceId: "derived", locator: "two leaks in series" } as const;
const check = (houseToZonePressurePa: number, share: number) => ({
  name: `${houseToZonePressurePa} of 50 Pa`,
  source: derived,
  input: { houseToZonePressurePa },
  expected: { share },
  relativeTolerance: 0.0015,
  toleranceReason: "stated to 3 figures",
});

export const toOutsideShareCard = defineMethod({
  id: "to-outside-share",
  title: "Share of a leak that reaches outside",
  group: "apportion",
  summary: "Share of a leak into a zone that a test of the leakage to outside sees.",
  equation: "share = (z/P)^n",
  validRange: "House to zone from 0 to the house's pressure to outside.",
  leftOut: "Zones that leak into each other.",
  sources: [derived],
  input: z.strictObject({
    houseToZonePressurePa: numberField({ unit: "Pa", title: "House to zone", min: 0, max: 100 }),
    houseToOutsidePressurePa: numberField({ unit: "Pa", title: "House to outside", above: 0, max: 100 }).optional(),
    exponent: numberField({ unit: "ratio", title: "Exponent", min: 0.4, max: 1.1 }).optional(),
  }),
  output: z.strictObject({ share: numberField({ unit: "share", title: "Share that reaches outside" }) }),
  defaults: {
    houseToOutsidePressurePa: {
      value: 50,
      unit: "Pa",
      reason: "Zone pressures are read with the house at 50 Pa.",
      source: { sourceId: "practice" },
    },
    exponent: DUCT_LEAK_EXPONENT,
  },
  compute: toOutsideShare,
  checks: [check(48, 0.976), check(25, 0.66), check(10, 0.381)],
});
