import { COVER_KINDS, isFilmPushedOff } from "#lib/setup/register-cover.ts";
import { DERIVED, DUCT_STANDARD, PRACTICE, RATING_STANDARD, type SetupRule } from "./rule.ts";

const isRoughIn = (stage: string) => stage === "rough-in";

/** Before any hose is connected: safety, then the house and the ducts as the test needs them. */
export const PREPARE_RULES: readonly SetupRule[] = [
  {
    id: "combustion-safe",
    phase: "make-safe",
    applies: ({ hasCombustionAppliance, testKind }) => hasCombustionAppliance && testKind !== "combustion-safety",
    step: ({ traits }) =>
      traits.airHandler === "off"
        ? "Turn burners to pilot or off, leave your keys at the switch, and see that no fire burns."
        : "Turn other burners to pilot or off, leave your keys at the switch, and see that no fire burns.",
    why: () =>
      "A test fan can pull flue gas or ash into the rooms. Local codes and a licensed technician have the say.",
    basis: PRACTICE,
  },
  {
    id: "attic-safe",
    phase: "make-safe",
    applies: ({ personAt }) => personAt === "attic" || personAt === "crawlspace",
    step: () => "Light, mask, firm footing, somebody who knows where you are; stay out when it is too hot.",
    why: () => "Heat, nails, loose wires and old insulation hurt more people than ducts are worth.",
    basis: PRACTICE,
  },
  {
    id: "co-alarm",
    phase: "make-safe",
    applies: ({ testKind, hasCombustionAppliance }) => testKind === "combustion-safety" || hasCombustionAppliance,
    step: () =>
      "Wear a CO alarm that you have tested today. If it sounds: everybody out, and call for help from outdoors.",
    why: () => "Carbon monoxide cannot be smelled, and fans can bring it into the room where you stand.",
    basis: PRACTICE,
  },
  {
    id: "drill-with-care",
    phase: "make-safe",
    applies: ({ testKind, traits }) =>
      traits.usesDuctFan || testKind === "static-pressures" || testKind === "temperature-rise",
    step: () => "Before you drill a test hole: know what is behind it. Keep clear of coil, refrigerant, gas and wires.",
    why: () =>
      "A hole in a coil or a heat exchanger costs more than the job. When in doubt use an opening that is there.",
    basis: PRACTICE,
  },
  {
    id: "exhaust-off",
    phase: "prepare",
    applies: ({ testKind }) => testKind !== "combustion-safety",
    step: () => "Switch off the dryer, kitchen hood, bath fans and any ventilation system.",
    why: () => "Each moves air that the gauge would count as leakage.",
    basis: DUCT_STANDARD,
  },
  {
    id: "air-handler-off",
    phase: "prepare",
    applies: ({ traits, hasAirHandler }) => traits.airHandler === "off" && hasAirHandler,
    step: () => "Switch the air handler off at its disconnect, not only at the thermostat.",
    why: () => "A blower that starts during the test spoils it, and can start while your hand is inside.",
    basis: DUCT_STANDARD,
  },
  {
    id: "air-handler-running",
    phase: "prepare",
    applies: ({ traits }) => traits.airHandler === "running",
    step: ({ testKind }) =>
      testKind === "temperature-rise"
        ? "Run the heating at full output for ten minutes."
        : "Run the air handler at its highest usual speed.",
    why: ({ testKind }) =>
      testKind === "temperature-rise"
        ? "Heat, ducts and thermometers need that long to settle."
        : "Pressures belong to one air flow; the highest is the one that counts.",
    basis: PRACTICE,
  },
  {
    id: "filter-out",
    phase: "prepare",
    applies: ({ traits, hasAirHandler }) => traits.filter === "out" && hasAirHandler,
    step: () => "Take out every filter, at the air handler and behind the grilles. Close the filter slot.",
    why: () => "A filter holds back the test air, so one side stands at less than the target.",
    basis: DUCT_STANDARD,
  },
  {
    id: "filter-as-used",
    phase: "prepare",
    applies: ({ traits, testKind }) =>
      traits.filter === "as-used" && testKind !== "zone-pressures" && testKind !== "combustion-safety",
    step: () => "Leave the usual filter in, and note whether it is clean.",
    why: () => "The system is read as it runs; a dirty filter changes flow and pressures.",
    basis: PRACTICE,
  },
  {
    id: "dampers-open",
    phase: "prepare",
    applies: ({ testKind }) => testKind !== "zone-pressures" && testKind !== "combustion-safety",
    step: () => "Open every zone, balancing and register damper. Close outdoor-air intakes, and note what stays shut.",
    why: () => "A duct behind a shut damper is not tested.",
    basis: DUCT_STANDARD,
  },
  {
    id: "rough-in-scope",
    phase: "prepare",
    applies: ({ stage }) => isRoughIn(stage),
    step: ({ hasAirHandler }) =>
      hasAirHandler
        ? "Rough-in with the air handler: note that it is in place; cover the open boots."
        : "Rough-in without the air handler: blank the ends where it will stand, join supply and return or test one after the other, cover the boots.",
    why: ({ hasAirHandler }) =>
      hasAirHandler
        ? "The limit is another one with the air handler than without."
        : "The stricter limit without the air handler leaves room for the leaks that it will add.",
    basis: { sourceId: "iecc", locator: "rough-in, adopted local text governs" },
  },
  {
    id: "cover-registers",
    phase: "prepare",
    applies: ({ traits }) => traits.sealsRegisters,
    step: ({ registerCover, registerCount, testKind }) => {
      const others = testKind === "blower-door-subtraction" ? "" : " but the one that the fan is on";
      const when = testKind === "blower-door-subtraction" ? "For the second reading: cover" : "Cover";
      return `${when} all ${registerCount} registers and grilles${others} with ${COVER_KINDS[registerCover].label.toLowerCase()}; count them.`;
    },
    why: (context) =>
      isFilmPushedOff(context)
        ? "Ducts stand above the rooms, so the air pushes the film off: only adhesive film holds."
        : "Ducts stand below the rooms, so the air draws the film on: plain cling film holds too.",
    basis: PRACTICE,
  },
  {
    id: "registers-open",
    phase: "prepare",
    applies: ({ traits }) => !traits.sealsRegisters,
    step: () => "Open every register and grille, and take nothing for open that you have not seen.",
    why: () => "A shut register changes the pressure of its whole run.",
    basis: PRACTICE,
  },
  {
    id: "outside-door-open",
    phase: "prepare",
    applies: ({ traits }) => traits.outsideDoor === "open",
    step: () => "Open a door or a large window to outside, and the inside doors on the way to it.",
    why: () => "The house must stand at outdoor pressure; shut, it moves with the fan and the leakage reads low.",
    basis: RATING_STANDARD,
  },
  {
    id: "house-closed",
    phase: "prepare",
    applies: ({ traits, testKind }) => traits.usesHouseFan || testKind === "combustion-safety",
    step: () => "Close outside doors, windows, fireplace dampers and hatches; open all inside doors.",
    why: () => "The whole house must come to one pressure.",
    basis: RATING_STANDARD,
  },
  {
    id: "zones-stated",
    phase: "prepare",
    applies: ({ traits }) => traits.usesHouseFan,
    step: () => "Note for basement, crawlspace, attic and garage whether doors, hatches and vents are open or shut.",
    why: () => "A zone open to the house counts as inside, and the next test must find it the same.",
    basis: RATING_STANDARD,
  },
  {
    id: "barrier",
    phase: "prepare",
    applies: ({ testKind }) => testKind.startsWith("side-leakage"),
    step: () => "Blank off supply from return at the blower or filter slot with rigid board and tape, on all edges.",
    why: () => "Air that passes the blank counts for the wrong side.",
    basis: DUCT_STANDARD,
  },
  {
    id: "return-blanked",
    phase: "prepare",
    applies: ({ testKind }) => testKind === "matched-pressure",
    step: () =>
      "Read the supply plenum in normal operation. Then, switched off at the disconnect, blank off the return ducts at the cabinet.",
    why: () => "All air must come through the test fan; the plenum tells when the flow is the usual one again.",
    basis: PRACTICE,
  },
  {
    id: "signs-expected",
    phase: "prepare",
    applies: ({ traits }) => traits.usesDuctFan || traits.usesHouseFan,
    step: ({ direction, testKind }) =>
      testKind === "delta-q"
        ? "Plan pressures from 10 to 50 Pa in steps of 5, plus and minus; none within 5 Pa of zero."
        : `Note the direction: ${direction === "pushing" ? "pushing air in, so pressures count plus" : "pulling air out, so pressures count minus"}.`,
    why: ({ testKind }) =>
      testKind === "delta-q"
        ? "Both signs are needed to tell supply from return leaks; near zero every gust moves the flow of the house."
        : "A reading of the other sign means swapped hoses, and is caught at once.",
    basis: DERIVED,
  },
];
