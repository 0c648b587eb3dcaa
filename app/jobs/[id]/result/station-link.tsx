import Link from "next/link";
import { climateHref } from "#app/climate/climate-href.ts";
import type { Result } from "#lib/job/result/result-schema.ts";

/** Where the weather comes from, with the way to it; a weather file of one's own has no page. */
export function StationLink({ zip, place }: { zip: string | undefined; place: Result["place"] }) {
  if (place.distanceMiles === null) return place.stationTitle;
  return <Link href={climateHref({ zip, stationId: place.stationId })}>{place.stationTitle}</Link>;
}
