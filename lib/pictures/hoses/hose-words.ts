import type { GaugeChannel } from "#lib/setup/gauge-channels.ts";
import type { DrawnHose, HoseDrawing } from "#lib/setup/hose-drawing.ts";

/** What a gauge shows just now, by channel, as its figures stand there. */
export type ShownPressures = Readonly<Partial<Record<GaugeChannel["id"], string>>>;

const MINUS = "−";
const SIGNS = { "1": "+", "-1": MINUS, "0": "0" } as const;

/** What a channel should show: short on the gauge, whole in the list. */
export function channelReading({ id, expectedSign, expectedPressurePa }: GaugeChannel): {
  short: string;
  whole: string;
} {
  const sign = SIGNS[`${expectedSign}`];
  if (expectedPressurePa === undefined) {
    return { short: sign, whole: expectedSign === 1 ? "plus" : expectedSign === -1 ? "minus" : "0 Pa" };
  }
  const size = Math.abs(expectedPressurePa);
  const short = size === 0 ? "0" : `${sign}${size}`;
  return { short, whole: id === "fan" ? `about ${short} Pa` : `${short} Pa` };
}

/** Where each port of a channel gets its air, in words. */
export function portWords(channel: GaugeChannel, { hoses, nodes }: HoseDrawing) {
  const of = (role: DrawnHose["role"]) => {
    const hose = hoses.find((each) => each.channelId === channel.id && each.role === role);
    return hose && { hose, air: nodes.find(({ id }) => id === hose.from)!.label };
  };
  return { signal: of("signal"), reference: of("reference") };
}

export const OPEN_PORT = "no hose: port left open";
