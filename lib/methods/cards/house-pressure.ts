import { z } from "zod";
import { ENVELOPE_LEAK_EXPONENT } from "#lib/air/flow-at-pressure.ts";
import { housePressure } from "#lib/distribution/house-pressure.ts";
import { numberField } from "#lib/units/field.ts";
import { ratio } from "../duct-fields.ts";
import { defineMethod } from "../method-card.ts";

const derived = { sourceId: "derived", locator: "power law of the shell, worked by hand" } as const;
const TEST_PA = 50;
const leak = (side: string) =>
  numberField({ unit: "cfm", title: `${side} leakage to outside while running`, min: 0, max: 20000 });
const exact = { relativeTolerance: 1e-6, toleranceReason: "by hand to 7 figures" } as const;

export const housePressureCard = defineMethod({
  id: "house-pressure",
  title: "Pressure of the house while the blower runs",
  group: "distribution",
  summary: "Unequal leaks to outside push or pull on the house; a pull may bring flue gas down a chimney.",
  equation: "ΔP = sign(Q_r − Q_s)·(|Q_r − Q_s|/C)^(1/n), C = Q₅₀/50^n",
  validRange: "Up to about 50 Pa; below 0 the house is pulled on.",
  leftOut: "Wind, stack, other fans, closed doors.",
  sources: [derived, ENVELOPE_LEAK_EXPONENT.source],
  input: z.strictObject({
    supplyLeakageCfm: leak("Supply"),
    returnLeakageCfm: leak("Return"),
    envelopeLeakageCfm50: numberField({ unit: "cfm", title: "House air leakage at 50 Pa", above: 0, max: 30000 }),
    envelopeExponentRatio: ratio("Exponent of the house's leaks", { min: 0.4, max: 1 }).optional(),
  }),
  output: z.strictObject({
    housePressurePa: numberField({ unit: "Pa", title: "Pressure of the house against outside" }),
  }),
  defaults: { envelopeExponentRatio: ENVELOPE_LEAK_EXPONENT },
  compute: ({
    supplyLeakageCfm,
    returnLeakageCfm,
    envelopeLeakageCfm50,
    envelopeExponentRatio = ENVELOPE_LEAK_EXPONENT.value,
  }) =>
    housePressure({
      supplyLeakageCfm,
      returnLeakageCfm,
      envelopeCoefficient: envelopeLeakageCfm50 / TEST_PA ** envelopeExponentRatio,
      envelopeExponent: envelopeExponentRatio,
    }),
  checks: [
    {
      // 70 cfm through 2,150 cfm at 50 Pa: 50·(70/2150)^(1/0.65)
      name: "60 cfm blown out, 130 drawn in",
      source: derived,
      input: { supplyLeakageCfm: 60, returnLeakageCfm: 130, envelopeLeakageCfm50: 2150 },
      expected: { housePressurePa: 0.2574862 },
      ...exact,
    },
    {
      name: "the other way round it pulls as much",
      source: derived,
      input: { supplyLeakageCfm: 130, returnLeakageCfm: 60, envelopeLeakageCfm50: 2150 },
      expected: { housePressurePa: -0.2574862 },
      ...exact,
    },
  ],
});
