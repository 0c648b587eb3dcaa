import type { DrawnHose, HoseDrawing } from "#lib/setup/hose-drawing.ts";
import { lanePath } from "../house/lanes.ts";
import { coordinate as c, type ItemShape, type PlainShape, type Shape } from "../scene.ts";
import type { HoseFrame } from "./hose-frame.ts";
import { channelReading, type ShownPressures } from "./hose-words.ts";

/** The gauge, and every hose from its tap to its port with its number at both ends. */
export function drawHoses(drawing: HoseDrawing, frame: HoseFrame, shown?: ShownPressures): Shape[] {
  const hoses = drawing.hoses.map((hose) => drawHose(hose, frame));
  return [
    ...drawing.hoses.map(
      (hose): PlainShape => ({ kind: "path", d: pathOf(hose, frame), stroke: "card", strokeWidth: 6 }),
    ),
    ...drawGauge(drawing, frame, shown),
    ...hoses,
    ...openPorts(drawing, frame),
  ];
}

function pathOf({ path }: DrawnHose, frame: HoseFrame): string {
  const points = path.map((point) => frame.at(point));
  return lanePath({ points, radii: points.slice(2).map(() => 7) });
}

function drawHose(hose: DrawnHose, frame: HoseFrame): ItemShape {
  const ends = [hose.path[0]!, hose.path.at(-1)!].map((point) => frame.at(point));
  const isSignal = hose.role === "signal";
  return {
    kind: "item",
    id: hose.id,
    label: `Hose ${hose.number}. ${hose.label}`,
    shapes: [
      {
        kind: "path",
        d: pathOf(hose, frame),
        stroke: isSignal ? "accent" : "ink",
        strokeWidth: isSignal ? 3 : 2.2,
        ...(isSignal ? {} : { dash: [6, 4] as const }),
      },
      ...ends.flatMap((end) => endDisc({ end, hose, frame })),
    ],
  };
}

/** A full disc is a signal hose, a hollow one a reference hose. */
export function endDisc({
  end,
  hose,
  frame,
}: {
  end: { x: number; y: number };
  hose: Pick<DrawnHose, "number" | "role">;
  frame: Pick<HoseFrame, "discR">;
}): (PlainShape & { kind: "circle" | "text" })[] {
  const isSignal = hose.role === "signal";
  return [
    {
      kind: "circle",
      cx: c(end.x),
      cy: c(end.y),
      r: frame.discR,
      fill: isSignal ? "accent" : "card",
      stroke: isSignal ? "card" : "ink",
      strokeWidth: isSignal ? 1.5 : 2,
    },
    {
      kind: "text",
      x: c(end.x),
      y: c(end.y + 4.3),
      text: String(hose.number),
      size: 12,
      weight: 600,
      fill: isSignal ? "card" : "ink",
      anchor: "middle",
    },
  ];
}

/** The gauge with a row for each channel: signal port, what it should show, reference port. */
function drawGauge(
  { gauge, channels }: HoseDrawing,
  frame: HoseFrame,
  shown: ShownPressures | undefined,
): PlainShape[] {
  const [left, top] = [frame.x(gauge.left), frame.y(gauge.top)];
  const [right, bottom] = [frame.x(gauge.right), frame.y(gauge.bottom)];
  const rows = channels.flatMap((channel, row): PlainShape[] => {
    const y = frame.y(gauge.rowsY[row]!);
    return [
      {
        kind: "text",
        x: c((left + right) / 2),
        y: c(y + 4.5),
        text: readingThatFits(shown?.[channel.id] ?? channelReading(channel).short, frame),
        size: frame.isCompact ? 11 : 14,
        weight: 600,
        family: "mono",
        fill: "ink",
        anchor: "middle",
      },
    ];
  });
  return [
    {
      kind: "rect",
      x: c(left),
      y: c(top),
      width: c(right - left),
      height: c(bottom - top),
      radius: 5,
      fill: "card",
      stroke: "ink",
      strokeWidth: 2,
    },
    {
      kind: "text",
      x: c((left + right) / 2),
      y: c(top + (frame.isCompact ? 11 : 14)),
      text: channels.length === 0 ? "You" : frame.isCompact ? "Gauge" : "You · gauge",
      size: 12,
      fill: "soft",
      anchor: "middle",
    },
    ...rows,
  ];
}

/** On a phone three figures do not fit between two ports; the list below has them. */
function readingThatFits(text: string, { isCompact }: HoseFrame): string {
  if (!isCompact) return text;
  const whole = text.replace(/\.\d$/, "");
  return whole.length > 3 ? whole.slice(0, 1) : whole;
}

/** A port without a hose takes the air around the gauge. */
function openPorts({ channels, gauge }: HoseDrawing, frame: HoseFrame): PlainShape[] {
  return channels.flatMap((channel, row) => {
    const y = c(frame.y(gauge.rowsY[row]!));
    const openAt = [
      ...(channel.isSignalPortOpen ? [gauge.signalX] : []),
      ...(channel.isReferencePortOpen ? [gauge.referenceX] : []),
    ];
    return openAt.map(
      (x): PlainShape => ({
        kind: "circle",
        cx: c(frame.x(x)),
        cy: y,
        r: frame.discR - 1.5,
        fill: "card",
        stroke: "soft",
        strokeWidth: 1.8,
        dash: [2.5, 2],
      }),
    );
  });
}
