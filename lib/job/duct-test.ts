import { z } from "zod";
import { numberField } from "#lib/units/field.ts";
import { idSchema, isoDateSchema, noteSchema, shortTextSchema } from "./identity.ts";

export const TEST_STAGES = ["existing", "rough-in", "during-work", "final", "retest"] as const;
export type TestStage = (typeof TEST_STAGES)[number];

/** One step of a test. Either the flow itself, or the fan pressure that the instrument's calibration turns into one. */
const pointSchema = z
  .strictObject({
    ductPressurePa: numberField({
      unit: "Pa",
      title: "Duct pressure, with reference to the house",
      description: "With its sign: plus when air is pushed in.",
      min: -125,
      max: 125,
    }),
    flowCfm: numberField({ unit: "cfm", title: "Fan flow", above: 0, max: 8000 }).optional(),
    fanPressurePa: numberField({ unit: "Pa", title: "Fan pressure", above: 0, max: 1000 }).optional(),
    restrictorId: idSchema.optional().meta({ title: "Flow restrictor" }),
    isDoubtful: z.boolean().optional().meta({ title: "Kept but marked doubtful" }),
  })
  .meta({ id: "ReadingPoint", title: "Step of a test" });

const common = {
  id: idSchema,
  systemId: idSchema.optional().meta({ title: "System", description: "Absent: it measured the whole house." }),
  stage: z.enum(TEST_STAGES).meta({ title: "When in the work" }),
  date: isoDateSchema.optional(),
  time: z.iso.time({ precision: -1, error: "Enter the time as HH:MM" }).optional().meta({ title: "Time of day" }),
  by: shortTextSchema.optional().meta({ title: "Tested by" }),
  fanId: idSchema.optional().meta({ title: "Test fan" }),
  gaugeId: idSchema.optional().meta({ title: "Gauge" }),
  note: noteSchema.optional(),
  outdoorTemperatureF: numberField({ unit: "°F", title: "Outdoor temperature", min: -60, max: 130 }).optional(),
  indoorTemperatureF: numberField({ unit: "°F", title: "Indoor temperature", min: 30, max: 120 }).optional(),
} as const;

const fanTest = {
  ...common,
  direction: z
    .enum(["pushing", "pulling"])
    .meta({ title: "Direction", description: "Pushing air into the ducts, or pulling it out." }),
  part: z
    .enum(["whole", "supply", "return"])
    .optional()
    .meta({ title: "Part of the system", description: "Absent: the whole system." }),
  includesAirHandler: z.boolean().optional().meta({ title: "Air handler in place" }),
  baselineBeforePa: numberField({ unit: "Pa", title: "Baseline before", min: -25, max: 25 }).optional(),
  baselineAfterPa: numberField({ unit: "Pa", title: "Baseline after", min: -25, max: 25 }).optional(),
  points: z.array(pointSchema).min(1, "Enter at least one step").max(30),
} as const;

const totalLeakageSchema = z
  .strictObject({ kind: z.literal("total-leakage"), ...fanTest })
  .meta({ id: "TotalLeakageTest", title: "Total leakage" });

const leakageToOutsideSchema = z
  .strictObject({
    kind: z.literal("leakage-to-outside"),
    ...fanTest,
    houseToOutsidePressurePa: numberField({ unit: "Pa", title: "House to outside", min: -60, max: 60 }),
    ductToHousePressurePa: numberField({
      unit: "Pa",
      title: "Duct to house, left over",
      description: "Zero when house and ducts stand at the same pressure.",
      min: -60,
      max: 60,
    }),
  })
  .meta({ id: "LeakageToOutsideTest", title: "Leakage to outside" });

const blowerDoorSubtractionSchema = z
  .strictObject({
    kind: z.literal("blower-door-subtraction"),
    ...common,
    wholeHouseCfm50: numberField({ unit: "cfm", title: "House with registers open, at 50 Pa", above: 0, max: 30000 }),
    envelopeCfm50: numberField({ unit: "cfm", title: "House with registers sealed, at 50 Pa", above: 0, max: 30000 }),
    ductToHousePressurePa: numberField({ unit: "Pa", title: "Duct to house, registers sealed", min: -60, max: 60 }),
  })
  .meta({ id: "BlowerDoorSubtractionTest", title: "Blower-door subtraction" });

const deltaQSchema = z
  .strictObject({
    kind: z.literal("delta-q"),
    ...common,
    points: z
      .array(
        z.strictObject({
          envelopePressurePa: numberField({ unit: "Pa", title: "House to outside", min: -80, max: 80 }),
          deltaFlowCfm: numberField({
            unit: "cfm",
            title: "Flow with the air handler on minus off",
            min: -3000,
            max: 3000,
          }),
        }),
      )
      .min(5, "Enter at least five pressures")
      .max(60),
  })
  .meta({ id: "DeltaQTest", title: "Delta-Q" });

export const ductTestSchema = z
  .discriminatedUnion("kind", [totalLeakageSchema, leakageToOutsideSchema, blowerDoorSubtractionSchema, deltaQSchema])
  .meta({ id: "DuctTest", title: "Test" });

export type DuctTest = z.output<typeof ductTestSchema>;
export type FanTest = Extract<DuctTest, { kind: "total-leakage" | "leakage-to-outside" }>;
export type ReadingPoint = z.output<typeof pointSchema>;
