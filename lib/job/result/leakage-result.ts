import { z } from "zod";
import { numberField } from "#lib/units/field.ts";
import { SIDES } from "../duct-system.ts";
import { idSchema } from "../identity.ts";
import { ranged } from "./ranged.ts";

export const leakageSchema = z
  .strictObject({
    totalCfm25: ranged({ unit: "cfm", title: "Total leakage at 25 Pa" }),
    toOutsideCfm25: ranged({ unit: "cfm", title: "Leakage to outside at 25 Pa" }),
    supplyToOutsideCfm25: ranged({ unit: "cfm", title: "Supply leakage to outside at 25 Pa" }),
    returnToOutsideCfm25: ranged({ unit: "cfm", title: "Return leakage to outside at 25 Pa" }),
    fractionOfFanFlow: ranged({ unit: "ratio", title: "Leakage to outside over fan flow" }),
    cfm25Per100Ft2: ranged({ unit: "cfm/100 ft²", title: "Total leakage per 100 ft² of floor" }),
  })
  .meta({ id: "Leakage", title: "Leakage before the work" });

const efficiencySchema = z
  .strictObject({
    designBefore: ranged({ unit: "ratio", title: "Distribution efficiency on the design day, before" }),
    designAfter: ranged({ unit: "ratio", title: "Distribution efficiency on the design day, after" }),
    seasonalBefore: ranged({ unit: "ratio", title: "Distribution efficiency over the season, before" }),
    seasonalAfter: ranged({ unit: "ratio", title: "Distribution efficiency over the season, after" }),
  })
  .meta({ id: "DistributionEfficiency", title: "Distribution efficiency" });

const share = (title: string) => numberField({ unit: "share", title });

/** Where each unit of heat or cold from the equipment goes over the season. The first three add up to 1. */
const destinationSchema = z
  .strictObject({
    roomsShare: share("Reaches the rooms"),
    regainedShare: share("Lost and partly regained"),
    outsideShare: share("Lost to outside"),
    lossesBy: z
      .strictObject({
        supplyLeakShare: share("Supply leaks"),
        returnLeakShare: share("Return leaks, warmth or cold"),
        returnMoistureShare: share("Return leaks, moisture"),
        ductWallsShare: share("Through the walls of the ducts"),
        infiltrationShare: share("Outdoor air drawn in while the blower runs"),
        cyclingShare: share("Warming the ducts at each start"),
      })
      .meta({ id: "LossesBy", title: "What makes up the part lost to outside; one below 0 is a gain" }),
  })
  .meta({ id: "Destination", title: "Where it goes" });

const airflowSchema = z
  .strictObject({
    fanFlowBeforeCfm: numberField({ unit: "cfm", title: "Fan flow before" }),
    fanFlowAfterCfm: numberField({ unit: "cfm", title: "Fan flow after" }),
    externalStaticBeforePa: numberField({ unit: "Pa", title: "External static pressure before" }),
    externalStaticAfterPa: numberField({ unit: "Pa", title: "External static pressure after" }),
    deliveredBeforeCfm: numberField({ unit: "cfm", title: "Air delivered to rooms before" }),
    deliveredAfterCfm: numberField({ unit: "cfm", title: "Air delivered to rooms after" }),
  })
  .meta({ id: "Airflow", title: "Airflow" });

const capacitySchema = z
  .strictObject({
    regainedBtuPerH: numberField({ unit: "Btu/h", title: "Capacity regained on the design day" }),
    regainedTons: numberField({ unit: "ton", title: "The same in tons of 12,000 Btu/h" }),
  })
  .meta({ id: "CapacityRegained", title: "Capacity regained" });

/** Resistance heat that helps a heat pump out over the season. */
const supplementarySchema = z
  .strictObject({
    beforeKWh: numberField({ unit: "kWh", title: "Resistance heat before" }),
    afterKWh: numberField({ unit: "kWh", title: "Resistance heat after" }),
    beforeShare: share("Of the electricity for heating, before"),
    afterShare: share("Of the electricity for heating, after"),
  })
  .meta({ id: "SupplementaryHeat", title: "Supplementary heat" });

const modeSchema = z
  .strictObject({
    ...efficiencySchema.shape,
    destinationBefore: destinationSchema,
    destinationAfter: destinationSchema,
    capacity: capacitySchema,
    supplementary: supplementarySchema.optional(),
    registerDesignF: numberField({ unit: "°F", title: "Air at the registers on the design day, before" }),
  })
  .meta({ id: "DistributionMode", title: "Distribution in one mode" });

export const systemResultSchema = z
  .strictObject({
    id: idSchema,
    leakage: leakageSchema,
    distribution: z.strictObject({ heating: modeSchema.optional(), cooling: modeSchema.optional() }),
    airflow: airflowSchema,
    runs: z.array(
      z.strictObject({
        id: idSchema,
        airBeforeCfm: numberField({ unit: "cfm", title: "Air of the run before" }),
        airAfterCfm: numberField({ unit: "cfm", title: "Air of the run after" }),
      }),
    ),
  })
  .meta({ id: "SystemResult", title: "Result of one system" });

/** Pressure of the house against outside while every blower runs, from unequal leaks alone. Below 0: it is pulled on. */
export const housePressureSchema = z
  .strictObject({
    beforePa: numberField({ unit: "Pa", title: "House pressure before" }),
    afterPa: numberField({ unit: "Pa", title: "House pressure after" }),
    explanation: z.string(),
  })
  .meta({ id: "HousePressure", title: "House pressure" });

export const siteResultSchema = z
  .strictObject({
    id: idSchema,
    systemId: idSchema,
    cfm25: ranged({ unit: "cfm", title: "Leakage at 25 Pa" }),
    toOutsideCfm25: ranged({ unit: "cfm", title: "Leakage to outside at 25 Pa" }),
    operatingCfm: ranged({ unit: "cfm", title: "Leakage while the system runs" }),
    costUsdPerYear: numberField({ unit: "USD/yr", title: "What this leak costs a year" }),
  })
  .meta({ id: "SiteResult", title: "Result of one leak" });

export const notYetFoundSchema = z
  .strictObject({
    systemId: idSchema,
    side: z.enum(SIDES),
    outside: z.boolean().meta({ title: "To outside" }),
    cfm25: ranged({ unit: "cfm", title: "Not yet found, at 25 Pa" }),
  })
  .meta({ id: "NotYetFound", title: "Leakage not yet found" });

export type HousePressure = z.output<typeof housePressureSchema>;
export type Leakage = z.output<typeof leakageSchema>;
export type SystemResult = z.output<typeof systemResultSchema>;
export type SiteResult = z.output<typeof siteResultSchema>;
export type NotYetFound = z.output<typeof notYetFoundSchema>;
export type DistributionMode = z.output<typeof modeSchema>;
export type Destination = z.output<typeof destinationSchema>;
