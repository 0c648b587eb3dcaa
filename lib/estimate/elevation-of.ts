import type { Job } from "#lib/job/job-schema.ts";
import type { ReferenceData } from "./reference-data.ts";

/** Height of the house above sea level, ft: what the job says, else its town's, else the weather station's. */
export function elevationOf({ house }: Pick<Job, "house">, { place, climate }: ReferenceData): number {
  return house.elevationFt ?? place.elevation?.value ?? climate.elevationFt;
}
