import type { TapPoint } from "./gauge-channels.ts";
import type { FanConnection, Standpoint } from "./setup-answers.ts";

/** A point of the drawing: 0 to 100 from left to right and from top to bottom. */
export interface Point {
  x: number;
  y: number;
}

/** A place with its own air. */
export interface DrawnArea {
  id: "outside" | "attic" | "house" | "under" | "garage";
  label: string;
  x: number;
  y: number;
  width: number;
  height: number;
}

/** The invented house of every set-up drawing, cut open. */
export const AREAS: readonly DrawnArea[] = [
  { id: "outside", label: "Outdoors", x: 0, y: 0, width: 100, height: 100 },
  { id: "attic", label: "Attic", x: 12, y: 2, width: 70, height: 32 },
  { id: "house", label: "Rooms", x: 12, y: 34, width: 70, height: 38 },
  { id: "under", label: "Crawlspace or basement", x: 12, y: 72, width: 70, height: 26 },
  { id: "garage", label: "Garage", x: 82, y: 46, width: 18, height: 26 },
];

/** The middle of the upper edge of the gauge. */
export const PERSON: Readonly<Record<Standpoint, Point>> = {
  house: { x: 69, y: 42 },
  attic: { x: 62, y: 3 },
  crawlspace: { x: 66, y: 73 },
  basement: { x: 66, y: 73 },
  garage: { x: 88.2, y: 48 },
  outdoors: { x: 88.2, y: 4 },
};

/** Beside the house there is less room. */
export const gaugeHalfWidth = ({ x }: Point): number => (x > 82 ? 7 : 8);

/** Where the test fan joins; it stands in the rooms straight below. */
export const JOINS: Readonly<Record<FanConnection, { node: string; x: number }>> = {
  "central-return": { node: "return-grille", x: 23 },
  "air-handler-cabinet": { node: "air-handler", x: 35 },
  "supply-plenum": { node: "supply-plenum", x: 41.5 },
  "branch-register": { node: "register-1", x: 51 },
};

/**
 * How a hose leaves its tap: straight down or up from a duct, sideways, or hanging free in air that is the same
 * wherever one holds the end. Places of fan taps count from the middle of the fan.
 */
export interface TapPlace {
  label: string;
  leaves: "upright" | "level" | "hanging";
  at?: Point;
  isAtFan?: boolean;
}

export const TAP_PLACES: Readonly<Record<TapPoint, TapPlace>> = {
  "supply-plenum": { label: "Tap in the supply plenum", leaves: "upright", at: { x: 47, y: 28 } },
  "return-plenum": { label: "Tap in the return plenum", leaves: "upright", at: { x: 28.5, y: 28 } },
  house: { label: "Air of the rooms", leaves: "hanging" },
  outside: { label: "Outdoors, out of the wind", leaves: "level", at: { x: 94, y: 38 } },
  zone: { label: "The zone", leaves: "level", at: { x: 24, y: 95 } },
  room: { label: "Under the door of the room", leaves: "level", at: { x: 31, y: 69.5 } },
  pan: { label: "Pan over the register", leaves: "upright", at: { x: 52, y: 37.5 } },
  "combustion-zone": { label: "Room of the appliance", leaves: "level", at: { x: 27, y: 62 } },
  "fan-flow-tap": { label: "Flow tap of the fan", leaves: "level", at: { x: 4.6, y: 58 }, isAtFan: true },
  "fan-duct-side": { label: "Flexible duct before the fan", leaves: "level", at: { x: 1.6, y: 40 }, isAtFan: true },
  "fan-surroundings": { label: "Air around the fan", leaves: "level", at: { x: 6, y: 70 }, isAtFan: true },
};
