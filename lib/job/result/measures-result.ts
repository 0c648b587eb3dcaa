import { z } from "zod";
import { numberField } from "#lib/units/field.ts";
import { idSchema } from "../identity.ts";

const saved = {
  electricityKWh: numberField({ unit: "kWh", title: "Electricity saved a year" }),
  naturalGasTherms: numberField({ unit: "therm", title: "Gas saved a year" }),
  propaneGallons: numberField({ unit: "gal", title: "Propane saved a year" }),
  fuelOilGallons: numberField({ unit: "gal", title: "Heating oil saved a year" }),
  costUsdPerYear: numberField({ unit: "USD/yr", title: "Money saved a year" }),
};

const turnSchema = z
  .strictObject({ id: idSchema, title: z.string(), kind: z.enum(["measure", "ducts"]), ...saved })
  .meta({ id: "MeasureAtItsTurn", title: "What a measure saves at its turn" });

/** Other measures and the duct work in the order in which they are done, each at the best estimates. */
export const measuresInOrderSchema = z
  .strictObject({
    turns: z.array(turnSchema),
    together: z
      .strictObject(saved)
      .meta({ title: "All of them", description: "The sum of the turns, whatever their order." }),
  })
  .meta({ id: "MeasuresInOrder", title: "Measures in their order" });

export type MeasuresInOrder = z.output<typeof measuresInOrderSchema>;
export type MeasureAtItsTurn = z.output<typeof turnSchema>;
