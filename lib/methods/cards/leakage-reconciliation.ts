import { z } from "zod";
import { CELL_VARIANCE_SHARE, leakageReconciliation } from "#lib/apportion/leakage-reconciliation.ts";
import { MEASUREMENT_NAMES } from "#lib/apportion/measurement-rows.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const cfm25 = (title: string) => numberField({ unit: "cfm", title });
const measuredCfm25 = (title: string) => numberField({ unit: "cfm", title, min: 0, max: 20000 });
const side = z.enum(["supply", "return"]).meta({ title: "Side" });

const measurement = z
  .strictObject({
    cfm25: measuredCfm25("Measured at 25 Pa"),
    standardUncertaintyCfm25: measuredCfm25("Standard uncertainty; 0 is met exactly"),
  })
  .optional();

const site = (id: string, priorCfm25: number) => ({
  id,
  side: "supply" as const,
  toOutsideShare: 1,
  priorCfm25,
  priorRelativeUncertainty: 0.5,
});
const sites = [site("first", 20), site("second", 15), site("third", 10)];
const derived = { sourceId: "derived", locator: "the quadratic program, worked apart" } as const;

export const leakageReconciliationCard = defineMethod({
  id: "leakage-reconciliation",
  title: "Leaks by size that fit the measurements",
  group: "apportion",
  summary:
    "Sizes of the found leaks that fit the measurements, and what is not yet found on each side, outside and inside.",
  equation:
    "minimize Σ_found((x − p)/s)² + Σ_quarters(x/s_c)² + Σ_k((a_k·x − m_k)/u_k)², x ≥ 0; s = max(rel·p, abs) ≥ 0.005·M, s_c = M·√w",
  validRange: "Any number of leaks and any of the six measurements; exact ones that contradict each other are refused.",
  leftOut: "The doubt of the shares to outside.",
  sources: [{ sourceId: "own-method" }],
  input: z.strictObject({
    measurements: z
      .strictObject({
        total: measurement.meta({ title: "Total leakage" }),
        toOutside: measurement.meta({ title: "Leakage to outside" }),
        supply: measurement.meta({ title: "Supply leakage" }),
        return: measurement.meta({ title: "Return leakage" }),
        supplyToOutside: measurement.meta({ title: "Supply leakage to outside" }),
        returnToOutside: measurement.meta({ title: "Return leakage to outside" }),
      })
      .meta({ title: "Measurements" }),
    sites: z
      .array(
        z.strictObject({
          id: z.string().min(1).max(80).meta({ title: "Id of the leak" }),
          side,
          toOutsideShare: numberField({ unit: "share", title: "Share that reaches outside", min: 0, max: 1 }),
          priorCfm25: numberField({ unit: "cfm", title: "First guess at 25 Pa", min: 0, max: 20000 }),
          priorRelativeUncertainty: numberField({ unit: "ratio", title: "Doubt of the guess", min: 0, max: 10 }),
          priorAbsoluteUncertaintyCfm25: numberField({
            unit: "cfm",
            title: "Doubt of the guess, at least",
            min: 0,
            max: 20000,
          }).optional(),
        }),
      )
      .max(500)
      .meta({ title: "Found leaks" }),
    cellVarianceShare: numberField({
      unit: "share",
      title: "Variance of each quarter over that of the largest measurement",
      min: 1e-4,
      max: 4,
    }).optional(),
  }),
  output: z.strictObject({
    sites: z.array(
      z.strictObject({
        id: z.string(),
        cfm25: cfm25("Leakage at 25 Pa"),
        toOutsideCfm25: cfm25("To outside at 25 Pa"),
        standardUncertaintyCfm25: cfm25("Standard uncertainty"),
      }),
    ),
    notYetFound: z.array(
      z.strictObject({
        side,
        outside: z.boolean(),
        cfm25: cfm25("Not yet found at 25 Pa"),
        standardUncertaintyCfm25: cfm25("Standard uncertainty"),
      }),
    ),
    measurements: z.array(
      z.strictObject({
        name: z.enum(MEASUREMENT_NAMES),
        fittedCfm25: cfm25("As the leaks add up"),
        surplusZ: numberField({ unit: "ratio", title: "Found leaks over the measurement, in standard deviations" }),
      }),
    ),
    tellsMost: z
      .strictObject({
        name: z.enum(MEASUREMENT_NAMES),
        expectedCfm25: cfm25("What it would read"),
        standardUncertaintyCfm25: cfm25("How open that is"),
      })
      .nullable()
      .meta({ title: "The further measurement that would tell most" }),
  }),
  defaults: {
    cellVarianceShare: CELL_VARIANCE_SHARE,
    "sites.*.priorAbsoluteUncertaintyCfm25": {
      value: 0,
      unit: "cfm",
      reason: "The relative doubt alone.",
      source: { sourceId: "own-method" },
    },
  },
  compute: (input) => leakageReconciliation(input),
  checks: [
    {
      name: "three found leaks and a total of 200 ± 6 cfm",
      source: derived,
      input: { measurements: { total: { cfm25: 200, standardUncertaintyCfm25: 6 } }, sites },
      expected: {
        "sites.0.cfm25": 20.4,
        "sites.1.cfm25": 15.2,
        "sites.2.cfm25": 10.1,
        "notYetFound.0.cfm25": 38.5,
        "notYetFound.1.cfm25": 38.5,
        "notYetFound.2.cfm25": 38.5,
        "notYetFound.3.cfm25": 38.5,
      },
      relativeTolerance: 0.004,
      toleranceReason: "stated to 3 figures",
    },
    {
      name: "without a measurement the guesses come back",
      source: derived,
      input: { measurements: {}, sites },
      expected: { "sites.0.cfm25": 20, "sites.1.cfm25": 15, "sites.2.cfm25": 10 },
      relativeTolerance: 1e-12,
      toleranceReason: "exact: nothing pulls on the guesses",
    },
    {
      name: "ten times the flows, ten times the leaks",
      source: derived,
      input: {
        measurements: { total: { cfm25: 2000, standardUncertaintyCfm25: 60 } },
        sites: sites.map((each) => ({ ...each, priorCfm25: 10 * each.priorCfm25 })),
      },
      expected: { "sites.0.cfm25": 204, "notYetFound.0.cfm25": 385 },
      relativeTolerance: 0.004,
      toleranceReason: "stated to 3 figures",
    },
  ],
});
