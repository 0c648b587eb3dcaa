import type { PracticeChannelId } from "#lib/simulate/practice-setup.ts";
import type { PRACTICE_TAPS } from "./practice-query.ts";

export const TAP_LABELS: Readonly<Record<(typeof PRACTICE_TAPS)[number], string>> = {
  "open-port": "no hose: port open",
  "supply-plenum": "supply plenum",
  "return-plenum": "return plenum",
  house: "the rooms",
  outside: "outdoors",
  "fan-flow-tap": "flow tap of the fan",
  "fan-duct-side": "flexible duct before the fan",
  "fan-surroundings": "air around the fan",
};

export const CHANNEL_LABELS: Readonly<Record<PracticeChannelId, string>> = {
  duct: "Ducts to house",
  fan: "Fan pressure",
  house: "House to outside",
};

/** A pressure as the gauge shows it. */
export const shownPressure = (pressurePa: number): string => {
  const text = Math.abs(pressurePa).toFixed(1);
  return pressurePa < 0 && text !== "0.0" ? `−${text}` : text;
};
