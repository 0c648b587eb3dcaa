import { z } from "zod";
import { numberField } from "#lib/units/field.ts";
import { SIDES } from "./duct-system.ts";
import { idSchema, isoDateSchema, noteSchema, sha256Schema, shortTextSchema } from "./identity.ts";
import { LEAK_KIND_IDS } from "./leak-kinds.ts";

export const REACHES = ["easy", "moderate", "hard"] as const;
export type Reach = (typeof REACHES)[number];

/** The parts of a duct system that a leak can be put on in the drawing. */
export const DUCT_PARTS = ["cabinet", "plenum", "trunk", "take-off", "boot"] as const;
export type DuctPart = (typeof DUCT_PARTS)[number];

/** What the eye tells of a leak's size. Bands, gap or a plain estimate; nothing at all is allowed too. */
const sizeSchema = z
  .discriminatedUnion("from", [
    z.strictObject({
      from: z.literal("band"),
      band: z
        .enum(["hairline", "pencil-wide", "finger-wide", "hand-wide", "fully-open"])
        .meta({ title: "Gap, as the eye sees it" }),
    }),
    z.strictObject({
      from: z.literal("gap"),
      gapLengthIn: numberField({ unit: "in", title: "Gap length", above: 0, max: 400 }),
      gapWidthIn: numberField({ unit: "in", title: "Gap width", above: 0, max: 40 }),
    }),
    z.strictObject({
      from: z.literal("estimate"),
      estimateCfm25: numberField({ unit: "cfm", title: "Leakage at 25 Pa, estimated", min: 0, max: 3000 }),
      relativeUncertaintyRatio: numberField({
        unit: "ratio",
        title: "Doubt of the estimate",
        min: 0.05,
        max: 2,
      }).optional(),
    }),
  ])
  .meta({ id: "LeakSize", title: "Size of a leak" });

export const leakSiteSchema = z
  .strictObject({
    id: idSchema,
    systemId: idSchema,
    side: z.enum(SIDES).meta({ title: "Side" }),
    placeId: idSchema.meta({ title: "Place" }),
    kind: z.enum(LEAK_KIND_IDS).meta({ title: "Kind of leak" }),
    label: shortTextSchema.optional().meta({ title: "Where exactly" }),
    drawnAt: z
      .strictObject({
        part: z.enum(DUCT_PARTS).meta({ title: "Part of the ducts" }),
        alongShare: numberField({ unit: "share", title: "How far from left to right", min: 0, max: 1 }),
      })
      .optional()
      .meta({
        title: "Where it was put on the drawing",
        description: "The part of that side in that place, and how far from its leftmost to its rightmost one",
      }),
    partOfSiteId: idSchema.optional().meta({
      title: "On the same run or return path as",
      description:
        "The leak that stands for the run: torn, off, or a cavity used as a return. It is repaired first, and new duct there closes this leak too.",
    }),
    size: sizeSchema.optional(),
    reach: z.enum(REACHES).optional().meta({ title: "Reach" }),
    panPressurePa: numberField({ unit: "Pa", title: "Pressure pan reading", min: 0, max: 60 }).optional(),
    photos: z
      .array(
        z.strictObject({
          sha256: sha256Schema,
          takenOn: isoDateSchema.optional(),
          caption: shortTextSchema.optional(),
        }),
      )
      .max(12)
      .optional(),
    note: noteSchema.optional(),
    isSuspectedAsbestos: z.boolean().optional().meta({ title: "Material that may hold asbestos" }),
  })
  .meta({ id: "LeakSite", title: "Leak" });

export type LeakSite = z.output<typeof leakSiteSchema>;
/** Where a leak was put on the drawing; no number hangs on it. */
export type DrawnAt = NonNullable<LeakSite["drawnAt"]>;
export type LeakSize = z.output<typeof sizeSchema>;
