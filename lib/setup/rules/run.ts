import { DERIVED, DUCT_STANDARD, PRACTICE, RATING_STANDARD, type RuleContext, type SetupRule } from "./rule.ts";

const target = ({ targetPressurePa, traits }: RuleContext) => targetPressurePa ?? traits.usualTargetPa;
const signed = (context: RuleContext) => `${context.direction === "pushing" ? "+" : "−"}${target(context)} Pa`;
const toOutside = ({ testKind }: RuleContext) =>
  testKind === "leakage-to-outside" || testKind === "side-leakage-to-outside";
const total = ({ testKind }: RuleContext) => testKind === "total-leakage" || testKind === "side-leakage";
const hasBaseline = ({ traits, testKind }: RuleContext) =>
  testKind !== "matched-pressure" && (traits.usesHouseFan || traits.usesDuctFan);
const houseHeld = ({ testKind }: RuleContext) => testKind === "pressure-pan" || testKind === "zone-pressures";

/** Reading, and leaving the house as it was. */
export const RUN_RULES: readonly SetupRule[] = [
  {
    id: "baseline-before",
    phase: "run",
    applies: hasBaseline,
    step: () => "Fans covered and off: note the baseline of each pressure over at least ten seconds.",
    why: () => "Wind and stack effect are there without the fan, and are taken off the reading.",
    basis: DUCT_STANDARD,
  },
  {
    id: "hold-duct",
    phase: "run",
    applies: total,
    step: (context) =>
      `Turn the duct fan up until ducts to house shows ${signed(context)}; let it settle, average, note the fan pressure.`,
    why: () => "Leakage is stated at 25 Pa, about what a system feels on average while it runs.",
    basis: DUCT_STANDARD,
  },
  {
    id: "hold-both",
    phase: "run",
    applies: toOutside,
    step: (context) =>
      `Bring the house to ${signed(context)} with the house fan, then the ducts to 0 Pa against the house with the duct fan. Repeat until both hold, then note the fan pressure.`,
    why: () => "At equal pressure nothing passes between ducts and rooms; what the duct fan moves goes outdoors.",
    basis: DUCT_STANDARD,
  },
  {
    id: "hold-subtraction",
    phase: "run",
    applies: ({ testKind }) => testKind === "blower-door-subtraction",
    step: (context) =>
      `House at ${signed(context)}, registers open: note the flow. Then cover them, hold ${signed(context)} again, note flow and ducts to house.`,
    why: () => "The difference is small beside both flows, so wind and a restrictor change between them spoil it.",
    basis: DUCT_STANDARD,
  },
  {
    id: "hold-delta-q",
    phase: "run",
    applies: ({ testKind }) => testKind === "delta-q",
    step: () =>
      "At each pressure average the flow with the air handler off, then running, the house held at the same pressure.",
    why: () => "Only the change of flow counts. Wind changes it too: on a windy day leave this test.",
    basis: { sourceId: "astm-e1554", locator: "method A, form of" },
  },
  {
    id: "hold-house",
    phase: "run",
    applies: houseHeld,
    step: (context) => `Hold the house at ${signed(context)} and read one after the other.`,
    why: () => "Readings compare only at one house pressure.",
    basis: PRACTICE,
  },
  {
    id: "match-pressure",
    phase: "run",
    applies: ({ testKind }) => testKind === "matched-pressure",
    step: () =>
      "Air handler running, turn the test fan up until the supply plenum stands as before; note the fan pressure.",
    why: () =>
      "The same plenum pressure is the same flow. Short of it, flow goes with the square root of the pressures.",
    basis: PRACTICE,
  },
  {
    id: "worst-case",
    phase: "run",
    applies: ({ testKind }) => testKind === "combustion-safety",
    step: () =>
      "Worst case: exhaust fans, dryer and air handler on, doors as they pull hardest. Read the room's pressure, then spillage and CO with the burner lit.",
    why: () =>
      "Sealing ducts and house changes these pressures: the same test again after the work. The local protocol governs; stop and call a licensed technician if gas spills.",
    basis: PRACTICE,
  },
  {
    id: "several-steps",
    phase: "run",
    applies: total,
    step: () => "Better than one step: five from 10 to 50 Pa, with the same restrictor where its span allows.",
    why: () => "They show the exponent, and a blown-off cover as a step out of line.",
    basis: DUCT_STANDARD,
  },
  {
    id: "check-house-still",
    phase: "run",
    applies: total,
    step: () => "Look once at house to outside: it stays within a pascal of 0.",
    why: () => "If it moves with the fan, the open door is too small or shut.",
    basis: DERIVED,
  },
  {
    id: "cannot-reach",
    phase: "run",
    applies: (context) => total(context) || toOutside(context),
    step: () => "Target out of reach: look for film blown off, then a torn-off run, then a larger restrictor or fan.",
    why: () => "If none helps, the highest steady pressure is noted, and the result is carried up and marked.",
    basis: RATING_STANDARD,
  },
  {
    id: "baseline-after",
    phase: "run",
    applies: hasBaseline,
    step: () => "Fans off and covered: note the baseline again.",
    why: () => "If it moved, the weather moved, and the reading is worth less.",
    basis: DUCT_STANDARD,
  },
  {
    id: "put-back",
    phase: "put-back",
    applies: () => true,
    step: ({ traits, hasAirHandler }) =>
      [
        ...(traits.sealsRegisters ? ["uncover the registers, count them"] : []),
        ...(traits.filter === "out" && hasAirHandler ? ["filters in"] : []),
        "dampers, doors and switches as you found them",
        "plug the test holes",
      ]
        .join(", ")
        .replace(/^./, (first) => first.toUpperCase())
        .concat("."),
    why: () => "A forgotten cover or filter does more harm than the leak that was measured.",
    basis: PRACTICE,
  },
  {
    id: "relight",
    phase: "put-back",
    applies: ({ hasCombustionAppliance }) => hasCombustionAppliance,
    step: () => "Relight pilots, thermostat back, watch one start of each burner, take your keys.",
    why: () => "Nobody should find a cold house or an unlit pilot after you.",
    basis: PRACTICE,
  },
];
