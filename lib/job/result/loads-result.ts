import { z } from "zod";
import { numberField } from "#lib/units/field.ts";
import { idSchema } from "../identity.ts";
import { citationSchema } from "./evidence-result.ts";
import { ranged } from "./ranged.ts";

const fuelSchema = z.enum(["electricity", "naturalGas", "propane", "fuelOil"]);
const inUnit = (title: string) => z.number().meta({ unit: "as stated in `unit`", title });
const temperature = (title: string) => numberField({ unit: "°F", title }).nullable();

/** One way to tell the yearly use of a season: value, and the span in which it lies 8 times in 10. */
const loadEvidenceSchema = z
  .strictObject({
    from: z.enum(["bills", "known-use", "building"]),
    isUsed: z.boolean(),
    value: inUnit("Yearly use without the blower"),
    low: inUnit("Low"),
    high: inUnit("High"),
    unit: z.enum(["kWh", "therm", "gal"]),
    needBtu: numberField({ unit: "Btu", title: "What the rooms need a year, by this" }),
    relativeUncertaintyRatio: numberField({ unit: "ratio", title: "Standard uncertainty of the use" }),
    detail: z.string(),
    source: citationSchema,
  })
  .meta({ id: "LoadEvidence", title: "Evidence of a season's use" });

const seasonSchema = z
  .strictObject({
    mode: z.enum(["heating", "cooling"]),
    fuel: fuelSchema,
    systemIds: z.array(idSchema),
    evidence: z.array(loadEvidenceSchema),
  })
  .meta({ id: "SeasonLoad", title: "Need of one season and fuel" });

/** What the bills of one fuel say, brought to a typical year. */
const billedFuelSchema = z
  .strictObject({
    fuel: fuelSchema,
    model: z.enum(["heating", "cooling", "both", "base-only"]),
    reason: z.string(),
    periodsCount: numberField({ unit: "count", title: "Bills that could be used" }),
    unit: z.enum(["kWh", "therm", "gal"]),
    baseUse: inUnit("Base use a year: what does not follow the weather").nullable(),
    heatingUse: inUnit("Heating use of a typical year"),
    coolingUse: inUnit("Cooling use of a typical year"),
    heatingBalanceF: temperature("Outdoor temperature below which use rises"),
    coolingBalanceF: temperature("Outdoor temperature above which use rises"),
    cvRmseRatio: numberField({ unit: "ratio", title: "Scatter over the mean" }).nullable(),
    nmbeRatio: numberField({ unit: "ratio", title: "Mean miss over the mean" }).nullable(),
    rSquaredRatio: numberField({ unit: "ratio", title: "Share of the variation that is explained" }).nullable(),
  })
  .meta({ id: "BilledFuel", title: "What the bills say" });

export const loadsSchema = z
  .strictObject({ seasons: z.array(seasonSchema), bills: z.array(billedFuelSchema) })
  .meta({ id: "Loads", title: "What the house needs, and how that is known" });

const billedYearSchema = z
  .strictObject({
    periodsCount: numberField({ unit: "count", title: "Bills that could be used" }),
    billedDays: numberField({ unit: "d", title: "Days that they cover" }),
    knowsWeather: z.boolean().meta({ title: "Each bill tells how warm its days were" }),
    totalUse: inUnit("Use of a year of typical weather"),
    heatingUse: inUnit("Of it, heating"),
    coolingUse: inUnit("Of it, cooling"),
    baseUse: inUnit("Of it, what does not follow the weather"),
    cvRmseRatio: numberField({ unit: "ratio", title: "Scatter over the mean" }),
  })
  .meta({ id: "BilledYear", title: "A normal year by the bills" });

/** What bills from after the work say of one fuel, beside the estimate. */
export const laterBillsSchema = z
  .strictObject({
    fuel: fuelSchema,
    unit: z.enum(["kWh", "therm", "gal"]),
    before: billedYearSchema.nullable(),
    after: billedYearSchema.nullable(),
    saved: ranged({
      unit: "as stated in `unit`",
      title: "Saved in a year of typical weather, by the bills",
    }).nullable(),
    fractionalUncertaintyRatio: numberField({
      unit: "ratio",
      title: "Uncertainty of the saving at 68 % confidence over the saving",
    }).nullable(),
    isTold: z.boolean().meta({ title: "The bills can tell the saving" }),
    estimated: ranged({ unit: "as stated in `unit`", title: "Saved in a year, by the estimate" }),
    agreement: z.enum(["agree", "bills-show-less", "bills-show-more"]).nullable().meta({
      title: "Bills against estimate",
      description: "Null where the bills cannot tell. They agree where their spans of 8 in 10 meet.",
    }),
    /** In words: what the bills say or why they cannot tell, then what to keep in mind. */
    explanation: z.array(z.string()),
  })
  .meta({ id: "LaterBills", title: "What bills from after the work say" });

export type LaterBills = z.output<typeof laterBillsSchema>;
export type Loads = z.output<typeof loadsSchema>;
export type SeasonLoad = z.output<typeof seasonSchema>;
