import { z } from "zod";
import { numberField } from "#lib/units/field.ts";
import { idSchema, shortTextSchema } from "./identity.ts";

export const SIDES = ["supply", "return"] as const;
export type Side = (typeof SIDES)[number];

export const HEATING_KINDS = [
  "gas-furnace",
  "propane-furnace",
  "oil-furnace",
  "electric-furnace",
  "heat-pump",
] as const;
export type HeatingKind = (typeof HEATING_KINDS)[number];

const lowStageSchema = z
  .strictObject({
    capacityRatio: numberField({
      unit: "ratio",
      title: "Output at the low stage, over the high one",
      min: 0.15,
      max: 1,
    }).optional(),
    flowRatio: numberField({
      unit: "ratio",
      title: "Airflow at the low stage, over the high one",
      min: 0.2,
      max: 1,
    }).optional(),
    blowerPowerRatio: numberField({
      unit: "ratio",
      title: "Blower power at the low stage, over the high one",
      min: 0.02,
      max: 1,
    }).optional(),
    loadShare: numberField({
      unit: "share",
      title: "Share of the season's need that the low stage meets",
      description: "Asked of furnaces and air conditioners; a heat pump's follows from its size.",
      min: 0,
      max: 1,
    }).optional(),
  })
  .meta({ id: "LowStage", title: "Low stage" });

const heatingSchema = z
  .strictObject({
    kind: z.enum(HEATING_KINDS).meta({ title: "Heating equipment" }),
    outputBtuPerH: numberField({
      unit: "Btu/h",
      title: "Heating output",
      description: "What the equipment puts into the air; for a heat pump, its capacity at 47 °F.",
      min: 5000,
      max: 300000,
    }).optional(),
    annualEfficiency: numberField({
      unit: "ratio",
      title: "Yearly fuel efficiency",
      description: "AFUE as a ratio.",
      min: 0.5,
      max: 1,
    }).optional(),
    capacityAt17BtuPerH: numberField({
      unit: "Btu/h",
      title: "Heat pump capacity at 17 °F",
      min: 2000,
      max: 200000,
    }).optional(),
    copAt47Ratio: numberField({ unit: "ratio", title: "Heat pump COP at 47 °F", min: 1.2, max: 7 }).optional(),
    copAt17Ratio: numberField({ unit: "ratio", title: "Heat pump COP at 17 °F", min: 1, max: 6 }).optional(),
    frostCapacityFactor: numberField({
      unit: "ratio",
      title: "Capacity that frost leaves at 35 °F",
      min: 0.6,
      max: 1,
    }).optional(),
    frostPowerFactor: numberField({
      unit: "ratio",
      title: "Power that frost leaves at 35 °F",
      min: 0.8,
      max: 1,
    }).optional(),
    defrostHeatRatio: numberField({
      unit: "ratio",
      title: "Strip heat during defrost at 35 °F, over the capacity at 47 °F",
      description: "Averaged over the time the heat pump runs; 0 where no strips run during defrost.",
      min: 0,
      max: 0.2,
    }).optional(),
    staging: z.enum(["single", "two-stage", "variable"]).optional().meta({ title: "Stages" }),
    lowStage: lowStageSchema.optional(),
  })
  .meta({ id: "HeatingEquipment", title: "Heating equipment" });

const coolingSchema = z
  .strictObject({
    kind: z.enum(["air-conditioner", "heat-pump"]).meta({ title: "Cooling equipment" }),
    capacityBtuPerH: numberField({
      unit: "Btu/h",
      title: "Cooling capacity",
      description: "Total: sensible and latent.",
      min: 5000,
      max: 120000,
    }).optional(),
    seer: z.number().min(6).max(30).optional().meta({ unit: "Btu/Wh", title: "Seasonal cooling efficiency (SEER)" }),
    sensibleHeatRatio: numberField({ unit: "ratio", title: "Sensible heat ratio", min: 0.5, max: 1 }).optional(),
    efficiencyAt95Ratio: numberField({
      unit: "ratio",
      title: "Cooling efficiency at 95 °F outdoors, over that at 82 °F",
      min: 0.6,
      max: 1.05,
    }).optional(),
    staging: z.enum(["single", "two-stage", "variable"]).optional().meta({ title: "Stages" }),
    lowStage: lowStageSchema.optional(),
  })
  .meta({ id: "CoolingEquipment", title: "Cooling equipment" });

const blowerSchema = z
  .strictObject({
    fanFlowCfm: numberField({ unit: "cfm", title: "Fan flow", min: 150, max: 4000 }).optional(),
    fanFlowBasis: z
      .enum(["measured-matched-pressure", "measured-temperature-rise", "nameplate", "estimated"])
      .optional()
      .meta({ title: "How the fan flow was found" }),
    supplyStaticPa: numberField({ unit: "Pa", title: "Supply plenum static pressure", min: 2, max: 300 }).optional(),
    returnStaticPa: numberField({
      unit: "Pa",
      title: "Return plenum static pressure",
      description: "Size only, without the minus sign.",
      min: 2,
      max: 300,
    }).optional(),
    nameplateStaticPa: numberField({
      unit: "Pa",
      title: "Nameplate external static pressure",
      min: 20,
      max: 400,
    }).optional(),
    powerW: numberField({ unit: "W", title: "Blower power", min: 30, max: 2000 }).optional(),
    ratedCfmPerTon: numberField({
      unit: "cfm/ton",
      title: "Airflow at which the equipment was rated",
      description: "For each 12,000 Btu/h of a heat pump or air conditioner.",
      min: 200,
      max: 700,
    }).optional(),
    control: z.enum(["fixed-speed", "constant-flow"]).optional().meta({ title: "Blower control" }),
  })
  .meta({ id: "Blower", title: "Blower" });

const runSchema = z
  .strictObject({
    id: idSchema,
    side: z.enum(SIDES).meta({ title: "Side" }),
    placeId: idSchema.meta({ title: "Place" }),
    label: shortTextSchema.optional().meta({ title: "Room or run" }),
    areaFt2: numberField({ unit: "ft²", title: "Outer surface of the duct", above: 0, max: 3000 }).optional(),
    lengthFt: numberField({ unit: "ft", title: "Length", above: 0, max: 500 }).optional(),
    diameterIn: numberField({ unit: "in", title: "Diameter", above: 0, max: 60 }).optional(),
    insulationRValue: numberField({
      unit: "h·ft²·°F/Btu",
      title: "Duct insulation",
      description: "Nominal; 0 for bare metal.",
      min: 0,
      max: 60,
    }).optional(),
    material: z
      .enum(["sheet-metal", "flexible", "duct-board", "building-cavity"])
      .optional()
      .meta({ title: "Duct material" }),
    isBuried: z.boolean().optional().meta({ title: "Buried in attic insulation" }),
    buriedRValue: numberField({
      unit: "h·ft²·°F/Btu",
      title: "What the attic insulation over it adds",
      min: 0,
      max: 40,
    }).optional(),
  })
  .meta({ id: "DuctRun", title: "Duct run" });

export const ductSystemSchema = z
  .strictObject({
    id: idSchema,
    label: shortTextSchema.meta({ title: "What to call this system" }),
    servedFloorShare: numberField({
      unit: "share",
      title: "Share of the house it serves",
      above: 0,
      max: 1,
    }).optional(),
    airHandlerPlaceId: idSchema.optional().meta({ title: "Where the air handler stands" }),
    heating: heatingSchema.optional(),
    cooling: coolingSchema.optional(),
    blower: blowerSchema.optional(),
    returnsCount: numberField({ unit: "count", title: "Return grilles", min: 1, max: 20, isInteger: true }).optional(),
    unfoundPressureFraction: numberField({
      unit: "ratio",
      title: "Part of the plenum pressure behind leaks that nobody found",
      min: 0.02,
      max: 1,
    }).optional(),
    runs: z.array(runSchema).max(80),
  })
  .meta({ id: "DuctSystem", title: "Duct system" });

export type DuctSystem = z.output<typeof ductSystemSchema>;
export type DuctRun = DuctSystem["runs"][number];
