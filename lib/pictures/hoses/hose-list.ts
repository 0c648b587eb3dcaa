import type { GaugeChannel } from "#lib/setup/gauge-channels.ts";
import type { HoseDrawing } from "#lib/setup/hose-drawing.ts";
import { wrapText } from "../measure-text.ts";
import { coordinate as c, type PlainShape } from "../scene.ts";
import { endDisc } from "./draw-hoses.ts";
import type { HoseFrame } from "./hose-frame.ts";
import { channelReading, OPEN_PORT, portWords, type ShownPressures } from "./hose-words.ts";

const SIZE = 13;
const LINE = 17;
const INDENT = 26;

/** Below the house: each channel with its two ports, which hose goes on each, and what it should show. */
export function hoseList(
  drawing: HoseDrawing,
  frame: HoseFrame,
  shown?: ShownPressures,
): { shapes: PlainShape[]; bottom: number } {
  let y = frame.houseBottom + 22;
  const shapes: PlainShape[] = [];
  for (const channel of drawing.channels) {
    const row = channelRow({ channel, drawing, frame, top: y, shown });
    shapes.push(...row.shapes);
    y = row.bottom;
  }
  return { shapes, bottom: drawing.channels.length === 0 ? frame.houseBottom + 6 : y - 18 };
}

function channelRow({
  channel,
  drawing,
  frame,
  top,
  shown,
}: {
  channel: GaugeChannel;
  drawing: HoseDrawing;
  frame: HoseFrame;
  top: number;
  shown: ShownPressures | undefined;
}): { shapes: PlainShape[]; bottom: number } {
  const { signal, reference } = portWords(channel, drawing);
  const columns = frame.isCompact ? [0, 0, 0] : [0, 210, 450];
  const shapes: PlainShape[] = [
    { kind: "text", x: 0, y: c(top), text: channel.label, size: SIZE + 1, weight: 600, fill: "ink" },
    {
      kind: "text",
      x: 0,
      y: c(top + LINE),
      text: shown ? `shows ${shown[channel.id]} Pa` : `should show ${channelReading(channel).whole}`,
      size: SIZE,
      fill: "ink",
    },
  ];
  const signalTop = frame.isCompact ? top + 2 * LINE + 4 : top;
  const signalEnd = port({
    x: columns[1]!,
    y: signalTop,
    hose: signal?.hose,
    text: `Signal: ${signal?.air ?? OPEN_PORT}`,
    frame,
  });
  const referenceTop = frame.isCompact ? signalEnd.bottom + LINE + 6 : top;
  const text = `Reference: ${reference?.air ?? OPEN_PORT}`;
  const referenceEnd = port({ x: columns[2]!, y: referenceTop, hose: reference?.hose, text, frame });
  shapes.push(...signalEnd.shapes, ...referenceEnd.shapes);
  const bottom = Math.max(top + LINE, signalEnd.bottom, referenceEnd.bottom) + 16;
  shapes.push({
    kind: "path",
    d: `M0 ${c(bottom - 7)}L${frame.width} ${c(bottom - 7)}`,
    stroke: "hairline",
    strokeWidth: 1,
  });
  return { shapes, bottom: bottom + 14 };
}

function port({
  x,
  y,
  hose,
  text,
  frame,
}: {
  x: number;
  y: number;
  hose: HoseDrawing["hoses"][number] | undefined;
  text: string;
  frame: HoseFrame;
}): { shapes: PlainShape[]; bottom: number } {
  const end = { x: x + 9, y: y - 4.5 };
  const sign: PlainShape[] = hose
    ? endDisc({ end, hose, frame: { discR: 9 } })
    : [{ kind: "circle", cx: end.x, cy: end.y, r: 7, fill: "card", stroke: "soft", strokeWidth: 1.8, dash: [2.5, 2] }];
  const maxWidth = (frame.isCompact ? frame.width : x === 210 ? 230 : frame.width - 450) - INDENT;
  const lines = wrapText({ text, size: SIZE, maxWidth });
  return {
    shapes: [
      ...sign,
      ...lines.map(
        (line, i): PlainShape => ({
          kind: "text",
          x: x + INDENT,
          y: c(y + i * LINE),
          text: line,
          size: SIZE,
          fill: "ink",
        }),
      ),
    ],
    bottom: y + (lines.length - 1) * LINE,
  };
}
