import type { Fahrenheit } from "#lib/units/quantity.ts";

/** The address of the page for these answers; bases go as °F, so that a link means the same to every reader. */
export function climateHref({
  zip,
  stationId,
  heatingBaseF,
  coolingBaseF,
}: {
  zip?: string | undefined;
  stationId?: string | undefined;
  heatingBaseF?: Fahrenheit;
  coolingBaseF?: Fahrenheit;
}): string {
  const fields = new URLSearchParams({
    ...(zip ? { zip } : {}),
    ...(stationId ? { station: stationId } : {}),
    ...(heatingBaseF === undefined ? {} : { heating: String(heatingBaseF), degrees: "F" }),
    ...(coolingBaseF === undefined ? {} : { cooling: String(coolingBaseF), degrees: "F" }),
  });
  return `/climate?${fields}`;
}
