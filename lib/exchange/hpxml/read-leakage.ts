import { SIDES } from "#lib/job/duct-system.ts";
import type { FanTest, TestStage } from "#lib/job/duct-test.ts";
import type { XmlNode } from "./xml-node.ts";

const PRESSURES_PA: Readonly<Record<string, number>> = { CFM25: 25, CFM50: 50 };
/** By the test's own procedure: the house is brought to 25 Pa, and nothing is left between ducts and house. */
const HOUSE_PRESSURE_PA = 25;

/**
 * Leakage that a duct tester measured, as a test with one step. The standard keeps neither the direction nor the fan:
 * pushing is taken, and said. What no tester measured is an estimate of another program, and becomes no test.
 */
export function readLeakage(
  ducts: XmlNode,
  { systemId, stage, date, say }: { systemId: string; stage: TestStage; date?: string; say: (line: string) => void },
): FanTest[] {
  const tests: FanTest[] = [];
  for (const entry of ducts.children("DuctLeakageMeasurement")) {
    const method = entry.text("DuctLeakageTestMethod");
    const leakage = entry.child("DuctLeakage");
    if (method !== "duct leakage tester" || !leakage) {
      entry.pass();
      say(
        `${entry.path}: ${method === undefined ? "no test method is named, so this is no reading" : `a ${method} cannot be taken up from its result alone`}; it was not read`,
      );
      continue;
    }
    const units = leakage.text("Units") ?? "";
    const ductPressurePa = PRESSURES_PA[units];
    const flowCfm = leakage.number("Value");
    if (ductPressurePa === undefined || flowCfm === undefined || !(flowCfm > 0)) {
      say(`${entry.path}: ${flowCfm ?? "no value"} ${units} is no flow at 25 or 50 Pa; it was not read`);
      continue;
    }
    const part = SIDES.find((side) => side === entry.text("DuctType"));
    const isToOutside = leakage.text("TotalOrToOutside") === "to outside";
    const common = {
      id: `${systemId}-${stage}-${tests.length + 1}`,
      systemId,
      stage,
      date,
      direction: "pushing" as const,
      part,
      note: "Read from an HPXML file, which keeps the flow but neither direction nor fan; pushing was taken.",
      points: [{ ductPressurePa, flowCfm }],
    };
    tests.push(
      isToOutside
        ? {
            kind: "leakage-to-outside",
            ...common,
            houseToOutsidePressurePa: HOUSE_PRESSURE_PA,
            ductToHousePressurePa: 0,
          }
        : { kind: "total-leakage", ...common },
    );
    say(`${entry.path}: the standard keeps no direction of the test fan; pushing was taken`);
  }
  return tests;
}
