import { JOB_SCHEMA_VERSION } from "#lib/job/job-schema.ts";
import type { OwnInstruments } from "./trip/steps/own-instruments.ts";

/** A job as it starts: a house with a name, its rooms, one duct system of which nothing is known yet. */
export function newJobDocument({
  label,
  zip,
  date,
  instruments,
}: {
  label: string;
  zip?: string;
  date: string;
  /** Those that the organization has in use. Its only fan and its only gauge come with every job; of several one chooses. */
  instruments?: OwnInstruments;
}) {
  const only = (list: OwnInstruments["fans"] = []) => (list.length === 1 ? list : []);
  const [fans, gauges] = [only(instruments?.fans), only(instruments?.gauges)];
  return {
    schemaVersion: JOB_SCHEMA_VERSION,
    id: idFrom(label),
    title: label,
    date,
    house: { label, kind: "site-built", ...(zip ? { zip } : {}) },
    places: [{ id: "rooms", kind: "conditioned" }],
    ...(fans.length + gauges.length > 0 ? { instruments: { fans, gauges } } : {}),
    systems: [{ id: "system-1", label: "Main system", runs: [] }],
    tests: [],
    sites: [],
  };
}

/** Letters, digits and dashes of a name, so that the file of a job is recognized by its id. */
function idFrom(label: string): string {
  const id = label
    .normalize("NFKD")
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, "-")
    .replaceAll(/^-+|-+$/g, "")
    .slice(0, 48);
  return id === "" ? "job" : id;
}
