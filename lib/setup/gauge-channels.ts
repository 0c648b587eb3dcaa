import type { Pascals } from "#lib/units/quantity.ts";
import type { SetupAnswers, Standpoint } from "./setup-answers.ts";
import { TEST_TRAITS } from "./test-traits.ts";

/** A place whose air pressure a hose brings to the gauge. */
export type TapPoint =
  | "supply-plenum"
  | "return-plenum"
  | "house"
  | "outside"
  | "zone"
  | "room"
  | "pan"
  | "combustion-zone"
  | "fan-flow-tap"
  | "fan-duct-side"
  | "fan-surroundings";

/** Two ports of the gauge that show one difference: signal hose less reference hose. */
export interface GaugeChannel {
  id: "duct" | "return" | "house" | "fan" | "pan" | "zone" | "room" | "combustion";
  label: string;
  signal: TapPoint;
  reference: TapPoint;
  /** A port with no hose on it takes the air where the gauge is. */
  isReferencePortOpen: boolean;
  /** No set-up leaves the signal port open; a learner may. */
  isSignalPortOpen?: boolean;
  /** What it shows when all is right: plus, minus, or held at zero. */
  expectedSign: 1 | -1 | 0;
  /** With its sign, where the test holds it. */
  expectedPressurePa?: Pascals;
  /** Which fan is turned until this channel is on target. */
  heldBy?: "duct-fan" | "house-fan";
}

const openAt = (reference: TapPoint, personAt: Standpoint): boolean =>
  ((reference === "house" || reference === "fan-surroundings") && personAt === "house") ||
  (reference === "outside" && personAt === "outdoors");

/**
 * The channels of a test with the hoses on each, and the sign that each shows.
 * The ducts are read against the house wherever the person stands; tests to outside add the house against outside.
 * Source: practice; signs derived (pushing raises, pulling lowers; air speeds up and its pressure falls at a flow tap).
 */
export function gaugeChannels(answers: SetupAnswers): GaugeChannel[] {
  const { testKind, direction, personAt } = answers;
  const traits = TEST_TRAITS[testKind];
  const sign = direction === "pushing" ? 1 : -1;
  const targetPa = answers.targetPressurePa ?? traits.usualTargetPa;
  const channel = (parts: Omit<GaugeChannel, "isReferencePortOpen">): GaugeChannel => ({
    ...parts,
    isReferencePortOpen: openAt(parts.reference, personAt),
  });

  const house = channel({
    id: "house",
    label: "House to outside",
    signal: "house",
    reference: "outside",
    expectedSign: sign,
    expectedPressurePa: sign * targetPa,
    heldBy: "house-fan",
  });
  const duct = { id: "duct", label: "Ducts to house", signal: ductTap(answers), reference: "house" } as const;
  const fan = channel({
    id: "fan",
    label: "Fan pressure",
    signal: "fan-flow-tap",
    reference: tapReference(answers),
    expectedSign: -1,
  });

  switch (testKind) {
    case "total-leakage":
    case "side-leakage":
      return [channel({ ...duct, expectedSign: sign, expectedPressurePa: sign * targetPa, heldBy: "duct-fan" }), fan];
    case "leakage-to-outside":
    case "side-leakage-to-outside":
      return [house, channel({ ...duct, expectedSign: 0, expectedPressurePa: 0, heldBy: "duct-fan" }), fan];
    case "blower-door-subtraction":
      // Sealed ducts stay between the house and outside, so they show the sign opposite to the house's.
      return [house, channel({ ...duct, expectedSign: sign === 1 ? -1 : 1 })];
    case "delta-q":
      return [house];
    case "static-pressures":
      return [
        channel({ ...duct, label: "Supply plenum to house", expectedSign: 1 }),
        channel({
          id: "return",
          label: "Return plenum to house",
          signal: "return-plenum",
          reference: "house",
          expectedSign: -1,
        }),
      ];
    case "temperature-rise":
      return [];
    case "matched-pressure":
      return [channel({ ...duct, label: "Supply plenum to house", expectedSign: 1, heldBy: "duct-fan" }), fan];
    case "pressure-pan":
      return [
        house,
        channel({
          id: "pan",
          label: "Pan to house",
          signal: "pan",
          reference: "house",
          expectedSign: sign === 1 ? -1 : 1,
        }),
      ];
    case "zone-pressures":
      return [
        house,
        channel({ id: "zone", label: "House to zone", signal: "house", reference: "zone", expectedSign: sign }),
      ];
    case "room-to-hall":
      return [channel({ id: "room", label: "Room to hall", signal: "room", reference: "house", expectedSign: 1 })];
    case "combustion-safety":
      return [
        channel({
          id: "combustion",
          label: "Appliance's room to outside",
          signal: "combustion-zone",
          reference: "outside",
          expectedSign: -1,
        }),
      ];
  }
}

/** Away from the fan: the pressure beside a fan is not the pressure of the ducts. */
function ductTap({ testKind, side }: SetupAnswers): TapPoint {
  return testKind.startsWith("side-leakage") && side === "return" ? "return-plenum" : "supply-plenum";
}

/** By the fan's own record; without one, against the air that enters the fan. */
function tapReference({ fan, direction }: SetupAnswers): TapPoint {
  const reference = fan?.tapReference[direction] ?? (direction === "pulling" ? "duct-side-air" : "air-around-fan");
  return reference === "duct-side-air" ? "fan-duct-side" : "fan-surroundings";
}
