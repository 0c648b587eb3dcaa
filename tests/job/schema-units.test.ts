import { describe, expect, it } from "vitest";
import { jobSchema } from "#lib/job/job-schema.ts";
import { resultSchema } from "#lib/job/result/result-schema.ts";
import { auditUnits } from "#tests/units/unit-audit.ts";

/** Names of the two documents that carry no unit on purpose; their unit still stands in the schema. */
const NAMES_WITHOUT_UNIT = [
  // Btu/Wh, and C of Q = C·P^n, whose unit depends on n.
  "seer",
  "coefficient",
  // Ratios and probabilities, by the names of the contract.
  "fractionOfFanFlow",
  "designBefore",
  "designAfter",
  "seasonalBefore",
  "seasonalAfter",
  "seed",
  // Person hours by reach; the name above them states the hours.
  "easy",
  "moderate",
  "hard",
  "heatingDegreeDaysAt65",
  "coolingDegreeDaysAt65",
  "globalIrradianceWPerM2",
  "probabilityOfReachingTarget",
  "probabilityOfMeetingTarget",
  // Their unit stands beside them in the document itself.
  "assumptions",
  "low",
  "high",
  "amount",
  "inputs",
  "outputs",
  "evidence",
  "beforeByMonth",
  "afterByMonth",
  "baseUse",
  "heatingUse",
  "coolingUse",
  "totalUse",
  "saved",
  "estimated",
];

describe.each([
  ["job", jobSchema, "input"],
  ["result", resultSchema, "output"],
] as const)("the %s document", (_, schema, io) => {
  it("states the unit of each number, and the name agrees", () => {
    const { faults, numbersSeen } = auditUnits(schema, NAMES_WITHOUT_UNIT, io);
    expect(faults).toEqual([]);
    expect(numbersSeen).toBeGreaterThan(40);
  });
});
