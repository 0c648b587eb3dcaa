import { z } from "zod";
import { numberField } from "#lib/units/field.ts";
import { idSchema, shortTextSchema } from "./identity.ts";
import { PLACE_KINDS } from "./place.ts";

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
    roofUValue: numberField({
      unit: "Btu/(h·ft²·°F)",
      title: "Heat that the roof lets through",
      min: 0.02,
      max: 1.5,
    }).optional(),
    ventilationCfmPerFt2: numberField({
      unit: "cfm/ft²",
      title: "Outdoor air through the attic, for each square foot of ceiling",
      min: 0,
      max: 2,
    }).optional(),
    roofColor: z.enum(["dark", "light"]).optional().meta({ title: "Roof color" }),
  })
  .meta({ id: "Place", title: "Place" });

export type Place = z.output<typeof placeSchema>;
