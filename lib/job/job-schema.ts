import { z } from "zod";
import { ductSystemSchema } from "./duct-system.ts";
import { ductTestSchema } from "./duct-test.ts";
import { energyUseSchema } from "./energy-use.ts";
import { houseSchema } from "./house.ts";
import { idSchema, isoDateSchema, noteSchema, shortTextSchema } from "./identity.ts";
import { fanSchema, gaugeSchema } from "./instrument-schema.ts";
import { leakSiteSchema } from "./leak-site.ts";
import { placeSchema } from "./place-schema.ts";
import { planSchema } from "./plan.ts";
import { priceBookSchema } from "./price-book-schema.ts";
import { ratesSchema } from "./rates.ts";
import { jobRepairsSchema } from "./repair-figures.ts";

export const JOB_SCHEMA_VERSION = "ductmend.job/1";

/** One file is one job: everything measured, seen, known and wanted for one house. */
export const jobSchema = z
  .strictObject({
    schemaVersion: z.literal(JOB_SCHEMA_VERSION),
    id: idSchema,
    title: shortTextSchema,
    isInvented: z.boolean().optional().meta({ title: "Invented example" }),
    date: isoDateSchema.optional().meta({ title: "Date of the visit" }),
    note: noteSchema.optional(),
    house: houseSchema,
    places: z.array(placeSchema).min(1, "Describe at least one place").max(20),
    systems: z.array(ductSystemSchema).min(1, "Describe at least one duct system").max(6),
    instruments: z
      .strictObject({ fans: z.array(fanSchema).max(10).optional(), gauges: z.array(gaugeSchema).max(10).optional() })
      .meta({ id: "Instruments", title: "Instruments" })
      .optional(),
    tests: z.array(ductTestSchema).max(60),
    sites: z.array(leakSiteSchema).max(200),
    energy: energyUseSchema.optional(),
    rates: ratesSchema.optional(),
    plan: planSchema.optional(),
    priceBook: priceBookSchema.optional(),
    repairs: jobRepairsSchema.optional(),
  })
  .meta({ id: "Job", title: "Job" });

export type Job = z.output<typeof jobSchema>;
