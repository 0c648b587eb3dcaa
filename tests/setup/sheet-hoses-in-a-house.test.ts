import { describe, expect, it } from "vitest";
import { DEMO_FAN } from "#lib/setup/demo-instruments.ts";
import { SETUP_TEST_KINDS, type SetupAnswers } from "#lib/setup/setup-answers.ts";
import { setupSheet } from "#lib/setup/setup-sheet.ts";
import { PERFECT_OBSERVER } from "#lib/simulate/observer.ts";
import { readSheet } from "#lib/simulate/read-sheet.ts";
import { expectClose } from "#tests/expect-close.ts";
import { PLAIN_HOUSE, randomHouseNumber } from "#tests/simulate/known-house.ts";

const answers = (changes: Partial<SetupAnswers>): SetupAnswers => ({
  testKind: "total-leakage",
  stage: "existing",
  hasAirHandler: true,
  side: "return",
  direction: "pushing",
  fanConnection: changes.testKind === "matched-pressure" ? "air-handler-cabinet" : "central-return",
  personAt: "house",
  registerCover: "adhesive-film",
  registerCount: 10,
  hasCombustionAppliance: false,
  expectedLeakageCfm: 250,
  fan: DEMO_FAN,
  ...changes,
});

/** A yielding air handler, for a fixed flow cannot be matched by pressure; a leak in a run for the pan to see. */
const HOUSES = [
  {
    ...PLAIN_HOUSE,
    airHandler: { ...PLAIN_HOUSE.airHandler, flowAtZeroCfm: 1100, slopeCfmPerPa: 2 },
    leaks: [...PLAIN_HOUSE.leaks, { ...PLAIN_HOUSE.leaks[0]!, id: "run", branchId: "supply-1", flowCfm25: 50 }],
  },
  ...[1, 2, 3, 5, 6].map((k) => randomHouseNumber(k)),
];

const CASES = SETUP_TEST_KINDS.filter((kind) => kind !== "temperature-rise").flatMap((testKind) =>
  (["pushing", "pulling"] as const)
    // A matched-pressure test can only push.
    .filter((direction) => testKind !== "matched-pressure" || direction === "pushing")
    .map((direction) => ({ testKind, direction })),
);

describe.each(CASES)("$testKind, $direction: hoses as the sheet draws them", ({ testKind, direction }) => {
  const given = answers({ testKind, direction });
  const sheet = setupSheet(given);

  it("every channel shows the sign that the sheet promises", () => {
    for (const house of HOUSES) {
      const readings = readSheet({ house, answers: given, sheet, observer: PERFECT_OBSERVER });
      expect(readings.length).toBe(sheet.drawing.channels.length);
      expect(readings.length).toBeGreaterThan(0);
      for (const { channelId, shownPa } of readings) {
        const { expectedSign, expectedPressurePa } = sheet.drawing.channels.find(({ id }) => id === channelId)!;
        if (expectedSign === 0) expect(Math.abs(shownPa)).toBeLessThan(1e-6);
        else expect(Math.sign(shownPa), `${channelId} shows ${shownPa} Pa in ${house.id}`).toBe(expectedSign);
        if (expectedPressurePa) {
          expectClose({
            actual: shownPa,
            expected: expectedPressurePa,
            relativeTolerance: 1e-8,
            reason: "held by a fan",
          });
        }
      }
    }
  });
});

it("swapped hoses show the other sign: the promise can fail", () => {
  const given = answers({ testKind: "total-leakage" });
  const sheet = setupSheet(given);
  const channels = sheet.drawing.channels.map((channel) =>
    channel.id === "fan" ? { ...channel, signal: channel.reference, reference: channel.signal } : channel,
  );
  const swapped = { ...sheet, drawing: { ...sheet.drawing, channels } };
  const readings = readSheet({ house: PLAIN_HOUSE, answers: given, sheet: swapped, observer: PERFECT_OBSERVER });
  expect(readings.find(({ channelId }) => channelId === "fan")!.shownPa).toBeGreaterThan(0);
});
