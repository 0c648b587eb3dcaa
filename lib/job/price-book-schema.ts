import { z } from "zod";
import { numberField } from "#lib/units/field.ts";
import { idSchema, isoDateSchema, shortTextSchema } from "./identity.ts";
import { PLACE_KINDS } from "./place.ts";

export const PRICE_BOOK_SCHEMA_VERSION = "ductmend.price-book/1";

const MOST_CENTS = 10_000_000;
const charge = (title: string, description?: string) =>
  numberField({ unit: "US¢", title, description, min: 0, max: MOST_CENTS, isInteger: true });

const labourSchema = z
  .strictObject({
    rateUsdCentsPerHour: numberField({
      unit: "US¢/h",
      title: "Cost of one person for one hour",
      description: "Wage with taxes and benefits, before overhead and margin.",
      min: 0,
      max: 50_000,
      isInteger: true,
    }),
    crewCount: numberField({ unit: "count", title: "People in the crew", min: 1, max: 12, isInteger: true }),
    visitHours: numberField({
      unit: "h",
      title: "Working hours of one visit",
      description: "Hours at the house on one day, after travel. More work than that needs another visit.",
      above: 0,
      max: 16,
    }),
  })
  .meta({ id: "LabourPrices", title: "Labor" });

const travelSchema = z
  .strictObject({
    visitUsdCents: charge("Vehicle cost of one visit"),
    travelHours: numberField({
      unit: "h",
      title: "Paid travel of each person per visit",
      description: "There and back.",
      min: 0,
      max: 12,
    }),
  })
  .meta({ id: "TravelPrices", title: "Travel" });

/** Paid once for a place, however many leaks are sealed there: lights, boards to walk on, cover sheets, suits. */
const setUpSchema = z
  .strictObject({
    placeKind: z.enum(PLACE_KINDS).meta({ title: "Kind of place" }),
    labourHours: numberField({ unit: "h", title: "Person hours to open and close it", min: 0, max: 40 }),
    suppliesUsdCents: charge("Supplies used up"),
  })
  .meta({ id: "PlaceSetUp", title: "Setting up in a place" });

const materialSchema = z
  .strictObject({
    id: idSchema,
    title: shortTextSchema,
    unit: shortTextSchema.meta({ title: "Unit it is bought in", description: "Such as gal, ft, ft², each." }),
    unitCostUsdCents: charge("Cost of one unit"),
    wasteShare: numberField({ unit: "share", title: "Bought beyond what is used", min: 0, max: 1 }),
  })
  .meta({ id: "MaterialPrice", title: "Material" });

export const TAX_BASES = ["materials", "labour", "everything"] as const;

const taxSchema = z
  .strictObject({
    id: idSchema,
    title: shortTextSchema,
    taxRate: numberField({ unit: "ratio", title: "Tax rate", min: 0, max: 0.3 }),
    appliesTo: z.enum(TAX_BASES).meta({
      title: "What is taxed",
      description: "Everything leaves out permit fees, which are passed on as they are.",
    }),
  })
  .meta({ id: "TaxRule", title: "Tax" });

const permitSchema = z
  .strictObject({
    id: idSchema,
    title: shortTextSchema,
    feeUsdCents: charge("Fee, passed on as it is"),
    neededFor: z.enum(["any-work", "replaced-duct"]).meta({ title: "When it is needed" }),
  })
  .meta({ id: "Permit", title: "Permit" });

export const rebateSchema = z
  .strictObject({
    id: idSchema,
    title: shortTextSchema,
    pays: z
      .discriminatedUnion("by", [
        z.strictObject({ by: z.literal("flat"), flatUsdCents: charge("Amount") }),
        z.strictObject({
          by: z.literal("cfm25-removed"),
          eachCfm25UsdCents: charge("Amount for each cfm at 25 Pa removed"),
        }),
        z.strictObject({
          by: z.literal("share-of-price"),
          priceShare: numberField({ unit: "share", title: "Share of the price", above: 0, max: 1 }),
        }),
      ])
      .meta({ title: "What it pays" }),
    atMostUsdCents: charge("At most").optional(),
    conditions: z
      .strictObject({
        measure: z.enum(["total", "to-outside"]).meta({ title: "Which leakage counts" }),
        leastRemovedCfm25: numberField({ unit: "cfm", title: "Removed, at least", min: 0, max: 5000 }).optional(),
        leastRemovedShare: numberField({ unit: "share", title: "Share removed, at least", min: 0, max: 1 }).optional(),
        mostLeftCfm25: numberField({ unit: "cfm", title: "Left, at most", min: 0, max: 5000 }).optional(),
      })
      .meta({ id: "RebateConditions", title: "Conditions that the retest has to show" }),
    conditionText: shortTextSchema.optional().meta({ title: "Other conditions, in words" }),
  })
  .meta({ id: "Rebate", title: "Rebate" });

/**
 * What a contractor charges. A version is never changed once a proposal has used it: a change is a new version, so an
 * old proposal keeps its prices.
 */
export const priceBookSchema = z
  .strictObject({
    schemaVersion: z.literal(PRICE_BOOK_SCHEMA_VERSION),
    id: idSchema,
    versionId: idSchema.meta({ title: "Version" }),
    title: shortTextSchema,
    issuedOn: isoDateSchema.optional().meta({ title: "In force from" }),
    isInvented: z.boolean().optional().meta({ title: "Invented example" }),
    labour: labourSchema,
    travel: travelSchema,
    setUps: z.array(setUpSchema).max(PLACE_KINDS.length),
    materials: z.array(materialSchema).max(200),
    overheadRate: numberField({
      unit: "ratio",
      title: "Overhead on direct cost",
      description: "Cost × (1 + overhead).",
      min: 0,
      max: 3,
    }),
    marginShare: numberField({
      unit: "share",
      title: "Margin as a share of the price",
      description: "Price = cost with overhead ÷ (1 − margin).",
      min: 0,
      max: 0.9,
    }),
    taxes: z.array(taxSchema).max(8),
    minimumUsdCents: charge("Least charge for any work", "Before tax and permits."),
    permits: z.array(permitSchema).max(8),
    testInUsdCents: charge("Test before the work", "Selling price; 0 when it is not charged."),
    testOutUsdCents: charge("Test after the work", "Selling price; 0 when it is not charged."),
    rebates: z.array(rebateSchema).max(20),
  })
  .meta({ id: "PriceBook", title: "Price book" });

export type PriceBook = z.output<typeof priceBookSchema>;
export type Rebate = PriceBook["rebates"][number];
export type MaterialPrice = PriceBook["materials"][number];
