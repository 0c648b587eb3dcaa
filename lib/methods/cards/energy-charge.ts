import { z } from "zod";
import { type EnergyRate, moneySaved } from "#lib/savings/rates.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const price = numberField({ unit: "USD/kWh", title: "Price of a kilowatt-hour", above: 0, max: 99 });
const use = (title: string) =>
  z
    .array(
      z.strictObject({
        nightKWh: numberField({ unit: "kWh", title: "Use from midnight to 8", min: 0, max: 1e6 }),
        dayKWh: numberField({ unit: "kWh", title: "Use from 8 to 16", min: 0, max: 1e6 }),
        eveningKWh: numberField({ unit: "kWh", title: "Use from 16 to midnight", min: 0, max: 1e6 }),
      }),
    )
    .length(12)
    .meta({ title });
const year = (nightKWh: number, dayKWh: number, eveningKWh: number) =>
  Array.from({ length: 12 }, () => ({ nightKWh, dayKWh, eveningKWh }));
const byHand = { relativeTolerance: 1e-12, toleranceReason: "exact arithmetic" } as const;
const derived = { sourceId: "derived", locator: "the bills by hand" } as const;

export const energyChargeCard = defineMethod({
  id: "energy-charge",
  title: "Money saved at a price in steps or by time of day",
  group: "savings",
  summary: "What a year's bills fall by when the use falls, at the price of the units that are no longer bought.",
  equation:
    "saved = Σ_months [charge(before) − charge(after)]; steps: Σ price·units within the step; shifts: Σ price·use",
  validRange:
    "Twelve months of the whole house's use of electricity (gas the same way in therms); prices above 0; steps rise and the last has no end.",
  leftOut: "Fixed charges, which are the same before and after; demand charges; taxes.",
  sources: [{ sourceId: "derived" }],
  input: z.strictObject({
    steps: z
      .array(
        z.strictObject({
          upToKWh: numberField({ unit: "kWh", title: "Up to this use a month", above: 0 }).optional(),
          usdPerKWh: price,
        }),
      )
      .max(12)
      .optional()
      .meta({ title: "Steps of the price" }),
    shifts: z
      .strictObject({ nightUsdPerKWh: price, dayUsdPerKWh: price, eveningUsdPerKWh: price })
      .optional()
      .meta({ title: "Prices by time of day, where there are no steps" }),
    before: use("Use before"),
    after: use("Use after"),
  }),
  output: z.strictObject({ savedUsd: numberField({ unit: "USD", title: "Saved in the year" }) }),
  defaults: {},
  compute({ steps, shifts, before, after }) {
    const rate: EnergyRate =
      steps || !shifts
        ? {
            kind: "tiered",
            steps: (steps ?? []).map(({ upToKWh, usdPerKWh }) => ({
              upToUnits: upToKWh ?? null,
              usdPerUnit: usdPerKWh,
            })),
          }
        : {
            kind: "time-of-use",
            usdPerUnitByShift: [[shifts.nightUsdPerKWh, shifts.dayUsdPerKWh, shifts.eveningUsdPerKWh]],
          };
    const months = (rows: typeof before) =>
      rows.map(({ nightKWh, dayKWh, eveningKWh }) => [nightKWh, dayKWh, eveningKWh] as const);
    return moneySaved({ rate, before: months(before), after: months(after) });
  },
  checks: [
    {
      name: "600 units a month fall to 450 over steps at 300 and 500: 100 at 0.30 and 50 at 0.20 a month",
      source: derived,
      input: {
        steps: [{ upToKWh: 300, usdPerKWh: 0.1 }, { upToKWh: 500, usdPerKWh: 0.2 }, { usdPerKWh: 0.3 }],
        before: year(200, 200, 200),
        after: year(150, 150, 150),
      },
      expected: { savedUsd: 480 },
      ...byHand,
    },
    {
      name: "20 units less each evening month at 0.40 and 10 less by day at 0.20: 12·(8 + 2)",
      source: derived,
      input: {
        shifts: { nightUsdPerKWh: 0.1, dayUsdPerKWh: 0.2, eveningUsdPerKWh: 0.4 },
        before: year(100, 50, 60),
        after: year(100, 40, 40),
      },
      expected: { savedUsd: 120 },
      ...byHand,
    },
  ],
});
