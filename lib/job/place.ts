import { z } from "zod";
import { numberField } from "#lib/units/field.ts";
import { idSchema, shortTextSchema } from "./identity.ts";

/** Where ducts and leaks can be. */
export const PLACE_KINDS = [
  "conditioned",
  "attic",
  "vented-crawlspace",
  "unvented-crawlspace",
  "basement",
  "garage",
  "belly",
  "joist-space",
  "below-slab",
  "outside",
] as const;
export type PlaceKind = (typeof PLACE_KINDS)[number];

/** Plain names of the places, as people say them. */
export const PLACE_LABELS: Readonly<Record<PlaceKind, string>> = {
  conditioned: "inside the rooms",
  attic: "attic",
  "vented-crawlspace": "vented crawlspace",
  "unvented-crawlspace": "sealed crawlspace",
  basement: "basement",
  garage: "garage",
  belly: "belly under the floor",
  "joist-space": "joist space between floors",
  "below-slab": "under the slab",
  outside: "outdoors",
};

/** A place around the ducts. Everything optional has a documented default that turns up in the assumptions. */
export const placeSchema = z
  .strictObject({
    id: idSchema,
    kind: z.enum(PLACE_KINDS).meta({ title: "Kind of place" }),
    label: shortTextSchema.optional(),
    insulation: z.enum(["none", "floor-or-ceiling", "walls"]).optional().meta({
      title: "What is insulated",
      description: "Which surface of a crawlspace or basement carries insulation.",
    }),
    houseToZonePressurePa: numberField({
      unit: "Pa",
      title: "House to zone pressure",
      description:
        "Measured with the house at the pressure below; between 0 (zone is inside) and that pressure (zone is outside).",
      min: 0,
      max: 60,
    }).optional(),
    houseToOutsidePressurePa: numberField({
      unit: "Pa",
      title: "House to outside pressure during that reading",
      min: 10,
      max: 60,
    }).optional(),
    regainFactor: numberField({ unit: "ratio", title: "Regain factor", min: 0, max: 1 }).optional(),
    unconditionedFactor: numberField({
      unit: "ratio",
      title: "Unconditioned-space factor",
      description: "0: as warm as the house; 1: as cold as outdoors.",
      min: 0,
      max: 1.2,
    }).optional(),
    ceilingRValue: numberField({ unit: "h·ft²·°F/Btu", title: "Ceiling insulation", above: 0, max: 100 }).optional(),
    roofColor: z.enum(["dark", "light"]).optional().meta({ title: "Roof color" }),
  })
  .meta({ id: "Place", title: "Place" });

export type Place = z.output<typeof placeSchema>;
