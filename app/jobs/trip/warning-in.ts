import type { Warning } from "#lib/job/result/evidence-result.ts";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import { sentenceInSystem } from "#lib/units/sentence-in-system.ts";

/** What the engine says back, for a reader of these units. */
export function warningIn(units: UnitSystem, warning: Warning): Warning {
  const say = (sentence: string) => sentenceInSystem(sentence, units);
  return { ...warning, what: say(warning.what), why: say(warning.why), nextMove: say(warning.nextMove) };
}
