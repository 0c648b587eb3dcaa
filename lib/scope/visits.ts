import type { Hours } from "#lib/units/quantity.ts";

/** Hours are added up in binary and solved within a tolerance; a trip is not called for by the last digits. */
const HOURS_TOLERANCE = 1e-6;

/** Trips that some person hours need: one at least, and one more for every visit's worth begun. */
export function visitsFor(labourHours: Hours, labourHoursOfVisit: Hours): number {
  return Math.max(1, Math.ceil((labourHours - HOURS_TOLERANCE) / labourHoursOfVisit));
}
