import type { UnitSystem } from "#lib/units/display-unit.ts";

/** Which units a person reads; it stays on this device for a year. */
export const UNIT_COOKIE = "ductmend-units";

export const readUnitSystem = (cookieValue: string | undefined): UnitSystem => (cookieValue === "si" ? "si" : "us");
