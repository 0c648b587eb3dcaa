import "server-only";
import { cookies } from "next/headers";
import type { UnitSystem } from "#lib/units/display-unit.ts";
import { readUnitSystem, UNIT_COOKIE } from "./unit-cookie.ts";

/** The units of whoever asks for the page. */
export async function unitSystem(): Promise<UnitSystem> {
  return readUnitSystem((await cookies()).get(UNIT_COOKIE)?.value);
}
