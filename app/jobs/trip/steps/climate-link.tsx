import Link from "next/link";
import { climateHref } from "#app/climate/climate-href.ts";

/** The way to the weather behind the ZIP code, once there is one. Beside the job, so that nothing entered is left. */
export function ClimateLink({
  zip = "",
  stationId = "",
}: {
  zip?: string | undefined;
  stationId?: string | undefined;
}) {
  const whole = /^\d{5}$/.test(zip.trim()) ? zip.trim() : undefined;
  if (whole === undefined && stationId === "") return null;
  return (
    <p>
      <Link href={climateHref({ zip: whole, stationId: stationId.trim() || undefined })} target="_blank">
        The climate of this place, with its stations (opens a new tab)
      </Link>
    </p>
  );
}
