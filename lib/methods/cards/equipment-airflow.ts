import { z } from "zod";
import { equipmentAirflow, RATED_CFM_PER_TON } from "#lib/distribution/equipment-airflow.ts";
import { ductFields, ratio } from "../duct-fields.ts";
import { defineMethod } from "../method-card.ts";

const curves = { sourceId: "nrel-56354", locator: "curves by airflow, evaluated by hand" } as const;
const byHand = { relativeTolerance: 1e-6, toleranceReason: "parabolas evaluated by hand to 7 figures" } as const;

export const equipmentAirflowCard = defineMethod({
  id: "equipment-airflow",
  title: "Heat pump or air conditioner by its airflow",
  group: "distribution",
  summary: "Too little air over the coil costs output and efficiency; sealing and static pressure change that air.",
  equation:
    "factor = a + b·x + c·x², x = airflow over 400 cfm a ton; capacity as it is, efficiency one over the power's",
  validRange: "Half to one and a half times the rated airflow; held beyond.",
  leftOut: "Furnaces and resistance heat, whose factors are 1; how the sensible share rises with the airflow.",
  sources: [curves, RATED_CFM_PER_TON.source],
  input: z.strictObject({
    mode: z.enum(["heating", "cooling"]).meta({ title: "Season" }),
    fanFlowCfm: ductFields.fanFlowCfm,
    ratedCapacityBtuPerH: ductFields.capacityBtuPerH,
    ratedCfmPerTon: z
      .number()
      .min(200)
      .max(700)
      .meta({ unit: "cfm/ton", title: "Airflow of the rating, for each ton" })
      .optional(),
  }),
  output: z.strictObject({
    capacityFactor: ratio("Capacity over its rating"),
    efficiencyFactor: ratio("Efficiency over its rating"),
  }),
  defaults: { ratedCfmPerTon: { ...RATED_CFM_PER_TON, reason: "The usual airflow of the rating." } },
  compute: equipmentAirflow,
  checks: [
    {
      name: "three tons with the air of the rating: 1",
      source: curves,
      input: { mode: "cooling", fanFlowCfm: 1200, ratedCapacityBtuPerH: 36000 },
      expected: { capacityFactor: 1, efficiencyFactor: 1 },
      relativeTolerance: 1e-6,
      toleranceReason: "the coefficients add up to 1 in their last digit",
    },
    {
      // 0.718605468 + 0.410099989·0.75 − 0.128705457·0.5625; 1/(1.32299905 − 0.477711207·0.75 + 0.154712157·0.5625)
      name: "three quarters of it, cooling",
      source: curves,
      input: { mode: "cooling", fanFlowCfm: 900, ratedCapacityBtuPerH: 36000 },
      expected: { capacityFactor: 0.9537836, efficiencyFactor: 0.9508042 },
      ...byHand,
    },
    {
      // 0.694045465 + 0.474207981·0.75 − 0.168253446·0.5625; 1/(2.185418751 − 1.942827919·0.75 + 0.757409168·0.5625)
      name: "three quarters of it, heating",
      source: curves,
      input: { mode: "heating", fanFlowCfm: 900, ratedCapacityBtuPerH: 36000 },
      expected: { capacityFactor: 0.9550589, efficiencyFactor: 0.8662955 },
      ...byHand,
    },
  ],
});
