import { PROGRAM_RULE_SCHEMA_VERSION, type ProgramRule } from "#lib/claims/program-rule.ts";

/** The rule of the invented program, in force from its first day. */
export const DEMO_PROGRAM_RULE: ProgramRule = {
  schemaVersion: PROGRAM_RULE_SCHEMA_VERSION,
  title: "Duct sealing rebate, 2026 (invented)",
  houseKinds: ["site-built", "manufactured"],
  testKinds: ["total-leakage", "leakage-to-outside"],
  measureLifeYears: 18,
  netToGrossRatio: 0.9,
  evidence: { photosPerRepairCount: 1, needsInstruments: true, needsNames: true },
  rebate: {
    id: "per-cfm",
    title: "By the leakage removed",
    pays: { by: "cfm25-removed", eachCfm25UsdCents: 250 },
    atMostUsdCents: 80_000,
    conditions: { measure: "total", leastRemovedShare: 0.3 },
  },
  inspection: { confidenceProbability: 0.9, precisionShare: 0.1 },
};
export const DEMO_RULE_DATE = "2026-01-01";
