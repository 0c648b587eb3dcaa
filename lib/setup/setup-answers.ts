import { z } from "zod";
import { SIDES } from "#lib/job/duct-system.ts";
import { TEST_STAGES } from "#lib/job/duct-test.ts";
import { isoDateSchema } from "#lib/job/identity.ts";
import { FAN_DIRECTIONS, fanSchema, gaugeSchema } from "#lib/job/instrument-schema.ts";
import { numberField } from "#lib/units/field.ts";

/** Every test that has a set-up sheet. */
export const SETUP_TEST_KINDS = [
  "total-leakage",
  "leakage-to-outside",
  "side-leakage",
  "side-leakage-to-outside",
  "blower-door-subtraction",
  "delta-q",
  "static-pressures",
  "temperature-rise",
  "matched-pressure",
  "pressure-pan",
  "zone-pressures",
  "room-to-hall",
  "combustion-safety",
] as const;
export type SetupTestKind = (typeof SETUP_TEST_KINDS)[number];

/** Where the test fan's flexible duct joins the ducts. */
export const FAN_CONNECTIONS = ["central-return", "air-handler-cabinet", "supply-plenum", "branch-register"] as const;
export type FanConnection = (typeof FAN_CONNECTIONS)[number];

/** Where the person with the gauge stands. */
export const STANDPOINTS = ["house", "attic", "crawlspace", "basement", "garage", "outdoors"] as const;
export type Standpoint = (typeof STANDPOINTS)[number];

/** What covers registers and grilles. */
export const REGISTER_COVERS = ["adhesive-film", "cling-film"] as const;
export type RegisterCover = (typeof REGISTER_COVERS)[number];

/** The few answers that a set-up sheet is made from. */
export const setupAnswersSchema = z
  .strictObject({
    testKind: z.enum(SETUP_TEST_KINDS).meta({ title: "Test" }),
    stage: z.enum(TEST_STAGES).meta({ title: "When in the work" }),
    hasAirHandler: z.boolean().meta({ title: "Air handler in place" }),
    side: z.enum(SIDES).optional().meta({ title: "Side", description: "For a test of one side." }),
    direction: z.enum(FAN_DIRECTIONS).meta({
      title: "Direction",
      description: "Pushing air in, or pulling it out; for house tests, of the house fan.",
    }),
    fanConnection: z.enum(FAN_CONNECTIONS).meta({ title: "Where the fan connects" }),
    personAt: z.enum(STANDPOINTS).meta({ title: "Where you stand with the gauge" }),
    registerCover: z.enum(REGISTER_COVERS).meta({ title: "What covers the registers" }),
    registerCount: numberField({
      unit: "count",
      title: "Registers and grilles to cover",
      min: 1,
      max: 80,
      isInteger: true,
    }),
    hasCombustionAppliance: z.boolean().meta({ title: "Furnace, water heater or fireplace with a flame indoors" }),
    targetPressurePa: numberField({
      unit: "Pa",
      title: "Target pressure, without its sign",
      description: "25 Pa between ducts and house; 50 Pa for tests of the house; the usual one when left out.",
      min: 5,
      max: 60,
    }).optional(),
    expectedLeakageCfm: numberField({
      unit: "cfm",
      title: "Flow to expect at the target",
      description: "From the limit to be met, or from an earlier test.",
      above: 0,
      max: 8000,
    }).optional(),
    fan: fanSchema.optional(),
    gauge: gaugeSchema.optional(),
    date: isoDateSchema.optional().meta({ title: "Date of the test" }),
  })
  .refine(({ testKind, side }) => !testKind.startsWith("side-leakage") || side !== undefined, {
    path: ["side"],
    error: "Choose the side to test: supply or return",
  })
  .meta({ id: "SetupAnswers", title: "Answers for a set-up sheet" });

export type SetupAnswers = z.output<typeof setupAnswersSchema>;
