import { DUCT_LEAK_EXPONENT, flowAtPressure } from "#lib/air/flow-at-pressure.ts";
import type { ValidityNote } from "#lib/errors/validity-note.ts";
import { planRestrictor } from "#lib/setup/restrictor-plan.ts";
import type { Pascals } from "#lib/units/quantity.ts";
import { type PracticeEvidence, shownText } from "./practice-evidence.ts";

const TARGET_PA = 25;
/** As near as a hand on the dial comes. Source: practice. */
const ON_TARGET_WITHIN_PA: Pascals = 0.5;
/** Full speed, and nothing left to turn up. */
const FULL_SPEED_SHARE = 0.995;

/** Fans that stand, run too slow or too fast, or carry the wrong flow restrictor. Source: practice. */
export function diagnoseFans(evidence: PracticeEvidence): ValidityNote[] {
  const { setup } = evidence;
  const notes: ValidityNote[] = [];
  if (setup.fanConnection === "branch-register") {
    notes.push({
      code: "fan-at-branch-end",
      severity: "doubt",
      what: "The fan is connected at the end of a branch.",
      why: "The narrow run throttles the test air, so the ducts do not stand at one pressure.",
      nextMove: "Connect at the central return.",
    });
  }
  if (setup.ductFanSpeedShare === 0) {
    notes.push(
      problem("fan-off", "The duct fan stands still.", "Without it nothing is measured.", "Turn it up slowly."),
    );
    return notes;
  }
  return [
    ...notes,
    ...(setup.testKind === "total-leakage" ? judgeTarget(evidence) : judgeBoth(evidence)),
    ...judgeRestrictor(evidence),
  ];
}

function problem(code: string, what: string, why: string, nextMove: string): ValidityNote {
  return { code, severity: "problem", what, why, nextMove };
}

function judgeTarget({ setup, readings, fan }: PracticeEvidence): ValidityNote[] {
  const shownPa = Math.abs(readings.duct);
  const shows = `Ducts to house shows ${shownText(readings.duct)}.`;
  if (shownPa > TARGET_PA + ON_TARGET_WITHIN_PA) {
    return [problem("above-target", shows, "Leakage is stated at 25 Pa.", "Turn the duct fan down.")];
  }
  if (shownPa >= TARGET_PA - ON_TARGET_WITHIN_PA) return [];
  if (setup.ductFanSpeedShare < FULL_SPEED_SHARE) {
    return [problem("below-target", shows, "Leakage is stated at 25 Pa.", "Turn the duct fan up.")];
  }
  const wider = widerRestrictor(setup, fan);
  if (wider) {
    return [
      problem(
        "cannot-reach",
        `${shows} The fan is at full speed.`,
        "Film off, a torn run, a flow restrictor too small, a fan too small: in this order. Nothing is off the registers.",
        `Take out the restrictor: try ${wider}.`,
      ),
    ];
  }
  return [
    {
      code: "extrapolated",
      severity: "doubt",
      what: `${shows} The fan is open and at full speed.`,
      why: "So much leakage is a torn run or a missing piece: look for it, it is the find of the day.",
      nextMove: "Note this highest steady pressure; the result is carried up to 25 Pa and marked.",
    },
  ];
}

function widerRestrictor({ direction, restrictorId }: PracticeEvidence["setup"], fan: PracticeEvidence["fan"]) {
  const rows = fan.calibrations
    .filter((row) => row.direction === direction)
    .sort((a, b) => a.coefficient - b.coefficient);
  return rows[rows.findIndex((row) => row.restrictorId === restrictorId) + 1]?.restrictorLabel;
}

/** To outside: first the house, then the ducts at its pressure. */
function judgeBoth({ setup, readings }: PracticeEvidence): ValidityNote[] {
  const housePa = Math.abs(readings.house);
  const up = setup.direction === "pushing";
  if (!(Math.abs(housePa - TARGET_PA) <= ON_TARGET_WITHIN_PA)) {
    return [
      problem(
        "house-off-target",
        `House to outside shows ${shownText(readings.house)}.`,
        "House and ducts must both stand at 25 Pa against outside.",
        `Turn the house fan ${housePa < TARGET_PA ? "up" : "down"}; the duct fan moves it a little too.`,
      ),
    ];
  }
  if (Math.abs(readings.duct) <= ON_TARGET_WITHIN_PA) return [];
  const isBehind = up ? readings.duct < 0 : readings.duct > 0;
  return [
    problem(
      "ducts-off-house",
      `Ducts to house shows ${shownText(readings.duct)}; it should be 0.`,
      "While they differ, leaks into the rooms are counted too.",
      `Turn the duct fan ${isBehind ? "up" : "down"}, then look at the house again.`,
    ),
  ];
}

function judgeRestrictor({ setup, fan, calibration, readings }: PracticeEvidence): ValidityNote[] {
  const fanPa = Math.abs(readings.fan);
  const { minFanPressurePa, maxFanPressurePa, restrictorLabel } = calibration;
  if (fanPa >= minFanPressurePa && fanPa <= maxFanPressurePa) return [];
  const flowCfm = calibration.coefficient * Math.max(fanPa, 0.1) ** calibration.exponent;
  const drivingPa = Math.abs(setup.testKind === "total-leakage" ? readings.duct : readings.house);
  const expectedFlowCfm = flowAtPressure(flowCfm, Math.max(drivingPa, 1), TARGET_PA, DUCT_LEAK_EXPONENT.value);
  const { chosen } = planRestrictor({ fan, direction: setup.direction, expectedFlowCfm });
  const better = chosen?.calibration.restrictorId === setup.restrictorId ? undefined : chosen;
  return [
    problem(
      "fan-pressure-outside-span",
      `Fan pressure shows ${shownText(readings.fan)}, ${fanPa < minFanPressurePa ? "below" : "above"} the span of ${restrictorLabel} (${minFanPressurePa} to ${maxFanPressurePa} Pa).`,
      "Outside its span the calibration is a guess.",
      better
        ? `Take ${better.calibration.restrictorLabel}; at 25 Pa it should show about ${Math.round(better.expectedFanPressurePa)} Pa.`
        : "Bring the pressure to its target first; this restrictor should then be inside its span.",
    ),
  ];
}
