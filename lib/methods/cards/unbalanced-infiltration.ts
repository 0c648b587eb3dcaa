import { z } from "zod";
import { unbalancedInfiltration } from "#lib/distribution/unbalanced-infiltration.ts";
import { numberField } from "#lib/units/field.ts";
import { defineMethod } from "../method-card.ts";

const flow = (title: string) => numberField({ unit: "cfm", title, min: 0, max: 20000 });
const exact = { relativeTolerance: 1e-12, toleranceReason: "exact arithmetic" } as const;
const source = { sourceId: "palmiter-bond", locator: "form of, from memory" } as const;

export const unbalancedInfiltrationCard = defineMethod({
  id: "unbalanced-infiltration",
  title: "Infiltration with unequal duct leaks",
  group: "distribution",
  summary: "The air that enters and leaves through the house's shell while unequal duct leaks push or pull on it.",
  equation:
    "U = |Q_s − Q_r|; more supply leakage: in = Q_n + U/2 while U < 2·Q_n, else U; out = max(0, Q_n − U/2); more return leakage: the other way round",
  validRange: "Leakage to outside at operating pressure, summed over the house's systems.",
  leftOut: "Wind and cold that move the house's pressure themselves.",
  sources: [source],
  input: z.strictObject({
    naturalInfiltrationCfm: flow("Natural infiltration, blower off"),
    supplyLeakageCfm: flow("Supply leakage to outside"),
    returnLeakageCfm: flow("Return leakage to outside"),
  }),
  output: z.strictObject({
    infiltrationCfm: numberField({ unit: "cfm", title: "Air in through the shell", min: 0 }),
    exfiltrationCfm: numberField({ unit: "cfm", title: "Air out through the shell", min: 0 }),
  }),
  defaults: {},
  compute: unbalancedInfiltration,
  checks: [
    {
      name: "more supply leakage",
      source,
      input: { naturalInfiltrationCfm: 60, supplyLeakageCfm: 120, returnLeakageCfm: 80 },
      expected: { infiltrationCfm: 80, exfiltrationCfm: 40 },
      ...exact,
    },
    {
      name: "more return leakage",
      source,
      input: { naturalInfiltrationCfm: 60, supplyLeakageCfm: 80, returnLeakageCfm: 120 },
      expected: { infiltrationCfm: 40, exfiltrationCfm: 80 },
      ...exact,
    },
    {
      name: "supply leakage that rules the house",
      source,
      input: { naturalInfiltrationCfm: 20, supplyLeakageCfm: 120, returnLeakageCfm: 20 },
      expected: { infiltrationCfm: 100, exfiltrationCfm: 0 },
      ...exact,
      scale: 100,
    },
  ],
});
