import type { JobRows } from "#lib/exchange/csv/read-job-rows.ts";
import { newJobDocument } from "./new-job-document.ts";

/** What the list of jobs needs to know of a document, whole or just begun. */
export interface JobStart {
  title: string;
  house: { label: string; zip?: string | undefined };
}

/** A job as the rows of a spreadsheet tell it; the trip asks for the rest. */
export function documentOfRows({ rows, date }: { rows: JobRows; date: string }) {
  const start = newJobDocument({ label: rows.house.label, date });
  return {
    ...start,
    house: { ...start.house, ...rows.house },
    places: [
      ...start.places.map((place) =>
        rows.placeKinds.includes("conditioned") ? { ...place, id: "conditioned" } : place,
      ),
      ...rows.placeKinds.filter((kind) => kind !== "conditioned").map((kind) => ({ id: kind, kind })),
    ],
    systems: rows.systems.map((system) => ({ ...system, runs: [] })),
    tests: rows.tests,
    sites: rows.sites,
  };
}
