import type { Citation } from "#lib/sources/source.ts";

/** What a field study of real houses found: to see the order of size, never a band that one house has to fall into. */
export interface FieldResult {
  id: string;
  /** What was done in which houses. */
  houses: string;
  found: string;
  source: Citation;
}

export const FIELD_RESULTS: readonly FieldResult[] = [
  {
    id: "retrofits-24-houses",
    houses: "Ducts of 24 houses sealed and insulated",
    found: "Their delivery efficiency rose from 64 to 76 % in the mean, and the energy used fell by 18 %.",
    source: { sourceId: "aceee-1996" },
  },
  {
    id: "manufactured-homes",
    houses: "Ducts of manufactured homes sealed",
    found: "1,258 kWh a year saved for each home in the mean, give or take 150 on that mean.",
    source: { sourceId: "aceee-1998" },
  },
];
