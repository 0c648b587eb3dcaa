import type { ValidityNote } from "#lib/errors/validity-note.ts";
import type { Fahrenheit } from "#lib/units/quantity.ts";
import type { AirPath } from "./air-path.ts";

/** Heating so weak, or ducts so cold, that the registers blow air colder than the room. */
export const REGISTER_COLDER_THAN_ROOM: ValidityNote = {
  code: "register-colder-than-room",
  severity: "doubt",
  what: "The air from the registers is colder than the room.",
  why: "The ducts lose more heat than the equipment puts in, as with a small heat pump on a bitter day. Then the air that leaks out of the supply would only have chilled the room, so a leak seems to help.",
  nextMove:
    "Check the capacity at this outdoor temperature and the fan flow. Insulate and seal the ducts; what matters here is the supplementary heat, which the season's estimate counts.",
};

/** The same in cooling. */
export const REGISTER_WARMER_THAN_ROOM: ValidityNote = {
  code: "register-warmer-than-room",
  severity: "doubt",
  what: "The air from the registers is warmer than the room while cooling.",
  why: "The ducts gain more heat than the equipment takes out, so running it warms the house.",
  nextMove: "Check capacity, fan flow and the return for a large leak or an open end in the attic.",
};

/** A return leak that brings in better air than the rooms'. */
export const RETURN_LEAK_HELPS: Readonly<Record<"heating" | "cooling", ValidityNote>> = {
  heating: {
    code: "return-leak-brings-warmth",
    severity: "note",
    what: "The place around the return is warmer than the air in it, so the return leak brings in free heat.",
    why: "Sealing only this leak makes the equipment work a little more. That is physics, not a slip: a warm crawlspace or furnace room preheats the air.",
    nextMove:
      "Seal it for other reasons: soil gas, moisture, dust and fumes come in the same way. Expect no heating savings from it.",
  },
  cooling: {
    code: "return-leak-brings-coolness",
    severity: "note",
    what: "The place around the return holds cooler or drier air than the rooms, so the return leak brings in free cooling.",
    why: "Sealing only this leak makes the equipment work a little more. A crawlspace that stays cool in summer does this.",
    nextMove:
      "Seal it for other reasons: soil gas, moisture and dust come in the same way. Expect no cooling savings from it.",
  },
};

/** What is unusual about a trip of the air, in plain words; empty when nothing is. */
export function explainAirPath({
  mode,
  path,
  indoorTemperatureF,
}: {
  mode: "heating" | "cooling";
  path: AirPath;
  indoorTemperatureF: Fahrenheit;
}): readonly ValidityNote[] {
  const notes: ValidityNote[] = [];
  if (mode === "heating" && path.registerF < indoorTemperatureF) notes.push(REGISTER_COLDER_THAN_ROOM);
  if (mode === "cooling" && path.registerF > indoorTemperatureF) notes.push(REGISTER_WARMER_THAN_ROOM);
  if (path.returnLeakBtuPerH < 0) notes.push(RETURN_LEAK_HELPS[mode]);
  return notes;
}
