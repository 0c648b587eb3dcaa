import type { FanDirection } from "#lib/job/instrument-schema.ts";
import type { HoseDrawing } from "#lib/setup/hose-drawing.ts";
import type { Pascals } from "#lib/units/quantity.ts";
import { drawCutHouse } from "./hoses/draw-cut-house.ts";
import { drawHoses } from "./hoses/draw-hoses.ts";
import { drawTestDucts } from "./hoses/draw-test-ducts.ts";
import { hoseFrame } from "./hoses/hose-frame.ts";
import { hoseLabels } from "./hoses/hose-labels.ts";
import { hoseList } from "./hoses/hose-list.ts";
import { channelReading, OPEN_PORT, portWords, type ShownPressures } from "./hoses/hose-words.ts";
import type { Scene, SceneOptions } from "./scene.ts";

export interface HoseSceneInput {
  /** Of the test. */
  title: string;
  direction: FanDirection;
  drawing: HoseDrawing;
  /** What the fan's own channel will show with the flow restrictor that was chosen. */
  expectedFanPressurePa?: Pascals;
  /** What the gauge shows just now, in place of what it should show. */
  shown?: ShownPressures;
}

/** A set-up sheet as a picture: which hose goes from where to which port, and what the gauge should then show. */
export function hoseScene(
  { title, direction, drawing: planned, expectedFanPressurePa, shown }: HoseSceneInput,
  { width }: SceneOptions,
): Scene {
  const drawing = { ...planned, channels: withFanPressure(planned.channels, expectedFanPressurePa) };
  const frame = hoseFrame(drawing, width);
  const list = hoseList(drawing, frame, shown);
  return {
    width,
    height: Math.ceil(list.bottom),
    title: `Hoses and taps: ${title}`,
    finding: shown ? shownFinding(drawing, shown) : findingOf(direction, drawing),
    ...(drawing.hoses.length > 0
      ? {
          note: [
            "The number is at both ends of a hose. Full disc and line: signal hose. Hollow disc and dashed line: reference hose. The gauge shows signal less reference.",
            ...(drawing.nodes.some(({ state, part }) => state === "covered" && part === "register")
              ? ["A dotted bar is the cover over a register or grille."]
              : []),
          ].join(" "),
        }
      : {}),
    table: {
      caption: "Ports of the gauge",
      columns: ["Channel", "Signal port", "Reference port", shown ? "Shows" : "Should show"].map((label) => ({
        label,
      })),
      rows: drawing.channels.map((channel) => {
        const { signal, reference } = portWords(channel, drawing);
        return [
          channel.label,
          signal ? `hose ${signal.hose.number}: ${signal.air}` : OPEN_PORT,
          reference ? `hose ${reference.hose.number}: ${reference.air}` : OPEN_PORT,
          shown ? `${shown[channel.id]} Pa` : channelReading(channel).whole,
        ];
      }),
    },
    shapes: [
      ...drawCutHouse(drawing, frame),
      ...drawTestDucts(drawing, frame),
      ...hoseLabels(drawing, frame),
      ...drawHoses(drawing, frame, shown),
      ...list.shapes,
    ],
  };
}

function findingOf(direction: FanDirection, { ducts, hoses, channels, nodes }: HoseDrawing): string {
  const isMoved = ducts.some(({ kind }) => kind === "air-flow");
  const isOfDucts = nodes.some(({ part }) => part === "duct-fan");
  const what = isOfDucts ? "ducts" : "house";
  const way = direction === "pushing" ? `pushed into the ${what}` : `pulled out of the ${what}`;
  const isBothWays = !isMoved && nodes.some(({ part }) => part === "house-fan");
  const still = isBothWays ? "The house fan pushes, then pulls" : "No test fan moves air";
  const first = isMoved ? `Air is ${way}` : still;
  const held = channels.filter(({ heldBy, expectedPressurePa }) => heldBy && expectedPressurePa !== undefined);
  const count = hoses.length === 0 ? "no hose" : hoses.length === 1 ? "one hose" : `${hoses.length} hoses`;
  if (isBothWays) return `${first}; ${count}; the house is held at each step, both ways.`;
  const shows = held.map((channel) => `${lowerFirst(channel.label)} ${channelReading(channel).whole}`);
  return shows.length === 0 ? `${first}; ${count}.` : `${first}; ${count}; hold ${shows.join(" and ")}.`;
}

function shownFinding({ channels }: HoseDrawing, shown: ShownPressures): string {
  return `The gauge shows ${channels.map(({ id, label }) => `${lowerFirst(label)} ${shown[id]} Pa`).join(", ")}.`;
}

/** The fan's channel with the size that is expected on it, when there is one. */
function withFanPressure(channels: HoseDrawing["channels"], expectedPa: Pascals | undefined): HoseDrawing["channels"] {
  if (expectedPa === undefined) return channels;
  const roundPa = Math.round(expectedPa);
  return channels.map((each) =>
    each.id === "fan" ? { ...each, expectedPressurePa: each.expectedSign * roundPa } : each,
  );
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
