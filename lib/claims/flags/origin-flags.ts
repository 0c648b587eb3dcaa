import type { DuctTest } from "#lib/job/duct-test.ts";
import { formatNumber } from "#lib/units/format.ts";
import type { Claim } from "../claim-schema.ts";
import { type ClaimFlag, type FlagEvidence, flag } from "./claim-flag.ts";

/** Two honest programs differ by about this much on one house. Source: practice, from memory. */
const USUAL_DIFFERENCE_SHARE = 0.25;

function leakageOf(test: DuctTest, index: number): FlagEvidence[] {
  if (test.kind !== "total-leakage" && test.kind !== "leakage-to-outside") return [];
  return test.points.map(({ flowCfm, ductPressurePa }, at) => ({
    path: `#/job/tests/${index}/points/${at}`,
    says: `${test.id}: ${formatNumber(flowCfm ?? 0)} cfm at ${formatNumber(ductPressurePa)} Pa stands in the file as a result`,
  }));
}

function apart(path: string, unit: string, claimed: number | undefined, own: number | undefined): FlagEvidence[] {
  if (claimed === undefined || own === undefined) return [];
  if (Math.abs(claimed - own) <= USUAL_DIFFERENCE_SHARE * Math.max(Math.abs(claimed), Math.abs(own))) return [];
  return [
    {
      path,
      says: `The file claims ${formatNumber(claimed)} ${unit} a year; from its own house and leakage this engine gets ${formatNumber(own)}`,
    },
  ];
}

/** Of a claim that came in a file of an open standard: what the file cannot show, and where its own answer is far off. */
export function originFlags({ job, origin, numbers }: Pick<Claim, "job" | "origin" | "numbers">): ClaimFlag[] {
  if (!origin) return [];
  return [
    ...flag("readings-not-in-file", job.tests.flatMap(leakageOf)),
    ...flag("savings-not-of-file", [
      ...apart(
        "#/origin/savedElectricityKWh",
        "kWh",
        origin.savedElectricityKWh,
        numbers["savings/electricityKWh"]?.[0],
      ),
      ...apart(
        "#/origin/savedNaturalGasTherms",
        "therms",
        origin.savedNaturalGasTherms,
        numbers["savings/naturalGasTherms"]?.[0],
      ),
    ]),
  ];
}
