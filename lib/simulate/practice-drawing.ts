import type { TestFan } from "#lib/job/instrument-schema.ts";
import { type GaugeChannel, gaugeChannels } from "#lib/setup/gauge-channels.ts";
import { type DrawnNode, type HoseDrawing, hoseDrawing } from "#lib/setup/hose-drawing.ts";
import { practiceAnswers } from "./practice-answers.ts";
import type { PracticeChannelId, PracticeSetup } from "./practice-setup.ts";

const CHANNELS: readonly { id: PracticeChannelId; label: string }[] = [
  { id: "duct", label: "Ducts to house" },
  { id: "fan", label: "Fan pressure" },
  { id: "house", label: "House to outside" },
];

/** What the learner has done, drawn as it is, right or wrong: hoses, open door, covers, straightener. Source: own-method. */
export function practiceDrawing({
  setup,
  fan,
  hasFilmBlownOff,
}: {
  setup: PracticeSetup;
  fan: TestFan;
  hasFilmBlownOff: boolean;
}): HoseDrawing {
  const answers = practiceAnswers(setup, {
    ...fan,
    needsFlowStraightenerWhenPulling: setup.hasFlowStraightener,
  });
  const wanted = new Map(gaugeChannels(answers).map((channel) => [channel.id, channel]));
  const channels = CHANNELS.map(({ id, label }): GaugeChannel => {
    const { signal, reference } = setup.hoses[id];
    return {
      id,
      label,
      expectedSign: wanted.get(id)?.expectedSign ?? 0,
      signal: signal === "open-port" ? "house" : signal,
      reference: reference === "open-port" ? "house" : reference,
      isSignalPortOpen: signal === "open-port",
      isReferencePortOpen: reference === "open-port",
    };
  });
  const drawing = hoseDrawing(answers, channels);
  const isSomeCoverOff = hasFilmBlownOff || setup.forgottenBranchIds.length > 0;
  const nodes = drawing.nodes
    .filter(({ part }) => part !== "open-door")
    .map((node): DrawnNode => (node.id === "register-2" && isSomeCoverOff ? { ...node, state: "open" } : node));
  const door: DrawnNode[] = setup.isOutsideDoorOpen
    ? [{ id: "open-door", part: "open-door", label: "Door open", x: 12, y: 62 }]
    : [];
  return { ...drawing, nodes: [...nodes, ...door] };
}
