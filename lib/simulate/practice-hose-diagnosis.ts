import type { ValidityNote } from "#lib/errors/validity-note.ts";
import { type GaugeChannel, gaugeChannels, type TapPoint } from "#lib/setup/gauge-channels.ts";
import { practiceAnswers } from "./practice-answers.ts";
import { type PracticeEvidence, shownText } from "./practice-evidence.ts";
import type { PracticeChannelId, PracticeSetup, PracticeTap } from "./practice-setup.ts";

const TAP_WORDS: Readonly<Record<PracticeTap, string>> = {
  "supply-plenum": "the supply plenum",
  "return-plenum": "the return plenum",
  house: "the rooms",
  outside: "outdoors",
  zone: "the attic",
  room: "a room",
  pan: "the pan",
  "combustion-zone": "the appliance's room",
  "fan-flow-tap": "the fan's flow tap",
  "fan-duct-side": "the flexible duct before the fan",
  "fan-surroundings": "the air around the fan",
  "open-port": "an open port",
};

/** Hoses that end where the test does not want them. Source: practice. */
export function diagnoseHoses({ setup, fan, readings }: PracticeEvidence): ValidityNote[] {
  const wanted = gaugeChannels(practiceAnswers(setup, fan));
  const notes = wanted.flatMap((channel): ValidityNote[] => {
    const note = judgeChannel(channel, setup, readings[channel.id as PracticeChannelId]);
    return note ? [note] : [];
  });
  const needsStraightener = setup.direction === "pulling" && fan.needsFlowStraightenerWhenPulling;
  if (needsStraightener && !setup.hasFlowStraightener) {
    notes.push({
      code: "flow-straightener-missing",
      severity: "problem",
      what: "The fan pulls through flexible duct without its flow straightener.",
      why: "Air that turns in the duct upsets the flow tap; the flow reads wrong and nothing on the gauge says so.",
      nextMove: "Put the straightener between duct and fan.",
    });
  }
  return notes;
}

function judgeChannel(channel: GaugeChannel, setup: PracticeSetup, shownPa: number): ValidityNote | undefined {
  const { signal, reference } = setup.hoses[channel.id as PracticeChannelId];
  const [signalAir, referenceAir] = [airOf(signal, setup), airOf(reference, setup)];
  const [wantedSignal, wantedReference] = [airOf(channel.signal, setup), airOf(channel.reference, setup)];
  if (signalAir === wantedSignal && referenceAir === wantedReference) return undefined;
  const shows = `${channel.label} shows ${shownText(shownPa)}.`;
  if (signalAir === wantedReference && referenceAir === wantedSignal) {
    return {
      code: `${channel.id}-hoses-swapped`,
      severity: "problem",
      what: `${shows} Its two hoses are swapped.`,
      why: "The gauge shows signal less reference, so the sign is turned round.",
      nextMove: `Signal: ${TAP_WORDS[channel.signal]}. Reference: ${TAP_WORDS[channel.reference]}.`,
    };
  }
  const isSignalWrong = signalAir !== wantedSignal;
  const [isAt, wantedAt] = isSignalWrong ? [signal, channel.signal] : [reference, channel.reference];
  const hose = isSignalWrong ? "signal" : "reference";
  return {
    code: `${channel.id}-${hose}-elsewhere`,
    severity: "problem",
    what: `${shows} Its ${hose} side ends at ${TAP_WORDS[isAt]}${isAt === "open-port" ? ` (${TAP_WORDS[airOf(isAt, setup)]})` : ""}.`,
    why: reasonFor(channel, hose),
    nextMove: `Bring the ${hose} hose to ${TAP_WORDS[wantedAt]}.`,
  };
}

/** Names of the same air are one: the practice fan stands in the rooms, an open port takes the air around the gauge. */
function airOf(tap: PracticeTap, { personAt }: PracticeSetup): TapPoint {
  if (tap === "open-port") return personAt === "attic" ? "zone" : "house";
  return tap === "fan-surroundings" ? "house" : tap;
}

function reasonFor({ id, reference }: GaugeChannel, hose: "signal" | "reference"): string {
  if (id === "duct" && hose === "reference") {
    return "Duct pressure is read against the house; the air where you stand has a pressure of its own.";
  }
  if (id === "fan" && hose === "reference") {
    return reference === "fan-duct-side"
      ? "Pulling, the fan breathes duct air: read against the room, the ducts' own pressure is added to the fan's."
      : "Pushing, the fan breathes room air: read against anything else, a pressure that is not the fan's is added.";
  }
  if (id === "house") return "The shell feels inside less outside, and nothing else.";
  return "The channel reads another air than the test is about.";
}
