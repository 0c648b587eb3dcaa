import { z } from "zod";
import { numberField } from "#lib/units/field.ts";
import { idSchema, isoDateSchema, shortTextSchema } from "./identity.ts";

/** Which way the test fan moves air: into the ducts or house, or out of them. */
export const FAN_DIRECTIONS = ["pushing", "pulling"] as const;
export type FanDirection = (typeof FAN_DIRECTIONS)[number];

/** What the fan's flow tap is read against: the air around the fan, or the air in the flexible duct before the fan. */
const TAP_REFERENCES = ["air-around-fan", "duct-side-air"] as const;

/** Bound of a test fan's flow as a share of the reading, when its own papers say nothing. Form of resnet-icc-380. */
export const DEFAULT_FLOW_ACCURACY_SHARE = 0.05;
/** Bound of a gauge: this share of the reading, or the pressure below, whichever is greater. Form of resnet-icc-380. */
export const DEFAULT_GAUGE_ACCURACY_SHARE = 0.01;
export const DEFAULT_GAUGE_ACCURACY_PA = 0.25;

const calibrationSchema = z
  .strictObject({
    restrictorId: idSchema.meta({ title: "Flow restrictor", description: "One id for the open fan too." }),
    restrictorLabel: shortTextSchema.meta({ title: "Name on the flow restrictor" }),
    direction: z.enum(FAN_DIRECTIONS).meta({ title: "Direction" }),
    coefficient: numberField({
      unit: "cfm/Pa^n",
      title: "Coefficient of the calibration",
      description: "C of Q = C·P^n, from the user's own calibration papers.",
      above: 0,
      max: 5000,
    }),
    exponent: numberField({ unit: "ratio", title: "Exponent of the calibration", min: 0.4, max: 0.7 }),
    minFanPressurePa: numberField({ unit: "Pa", title: "Lowest fan pressure of the span", above: 0, max: 500 }),
    maxFanPressurePa: numberField({ unit: "Pa", title: "Highest fan pressure of the span", above: 0, max: 1000 }),
  })
  .refine((calibration) => calibration.maxFanPressurePa > calibration.minFanPressurePa, {
    path: ["maxFanPressurePa"],
    error: "The highest fan pressure must be above the lowest",
  })
  .meta({ id: "FanCalibration", title: "Calibration of one flow restrictor in one direction" });

const identityAndDates = {
  serialNumber: shortTextSchema.optional().meta({ title: "Serial number" }),
  calibrationDate: isoDateSchema.optional().meta({ title: "Calibrated on" }),
  calibrationDueDate: isoDateSchema.optional().meta({ title: "Calibration due on" }),
  isInvented: z.boolean().optional().meta({ title: "Invented instrument of a demonstration" }),
} as const;

/** A test fan with its owner's own calibration. No maker's curve ships with the product. */
export const fanSchema = z
  .strictObject({
    id: idSchema,
    name: shortTextSchema.meta({ title: "Test fan" }),
    calibrations: z
      .array(calibrationSchema)
      .min(1, "Enter the calibration of at least one flow restrictor")
      .max(24)
      .refine((list) => new Set(list.map((c) => `${c.restrictorId} ${c.direction}`)).size === list.length, {
        error: "Each flow restrictor has one calibration in each direction",
      }),
    flowAccuracyShare: numberField({
      unit: "share",
      title: "Accuracy of the flow",
      description: "A bound, as a share of the reading; ±5 % when nothing is known.",
      above: 0,
      max: 0.3,
    }).optional(),
    calibrationDensityLbPerFt3: numberField({
      unit: "lb/ft³",
      title: "Air density of the calibration",
      min: 0.05,
      max: 0.1,
    }).optional(),
    needsFlowStraightenerWhenPulling: z.boolean().meta({
      title: "Needs a flow straightener when pulling",
      description: "Air that arrives through a bent flexible duct swirls and upsets the flow tap.",
    }),
    tapReference: z
      .strictObject({ pushing: z.enum(TAP_REFERENCES), pulling: z.enum(TAP_REFERENCES) })
      .meta({ title: "What the flow tap is read against" }),
    restrictorSide: z
      .enum(["inlet", "outlet"])
      .meta({ title: "Side of the fan that takes the flow restrictor", description: "Inlet: where air enters." }),
    ...identityAndDates,
  })
  .meta({ id: "TestFan", title: "Test fan" });

/** A pressure gauge of two or more channels, each with two ports. */
export const gaugeSchema = z
  .strictObject({
    id: idSchema,
    name: shortTextSchema.meta({ title: "Gauge" }),
    accuracyShare: numberField({
      unit: "share",
      title: "Accuracy as a share of the reading",
      description: "A bound; 1 % when nothing is known.",
      min: 0,
      max: 0.2,
    }).optional(),
    accuracyPa: numberField({
      unit: "Pa",
      title: "Accuracy near zero",
      description:
        "A bound that holds where it is greater than the share of the reading; 0.25 Pa when nothing is known.",
      min: 0,
      max: 5,
    }).optional(),
    resolutionPa: numberField({ unit: "Pa", title: "Last digit shown", above: 0, max: 2 }).optional(),
    ...identityAndDates,
  })
  .meta({ id: "Gauge", title: "Gauge" });

export type FanCalibration = z.output<typeof calibrationSchema>;
export type TestFan = z.output<typeof fanSchema>;
export type Gauge = z.output<typeof gaugeSchema>;
