import { InputProblem } from "#lib/errors/input-problem.ts";
import { JOB_SCHEMA_VERSION, type Job } from "#lib/job/job-schema.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { EVENTS } from "./hpxml-words.ts";
import { ownId } from "./own-id.ts";
import { type ClaimedSavings, readClaimedSavings } from "./read-claimed-savings.ts";
import { readHouse } from "./read-house.ts";
import { readLeakage } from "./read-leakage.ts";
import { readSystems } from "./read-systems.ts";
import { parseXml, type XmlNode } from "./xml-node.ts";

export interface HpxmlReading {
  job: Job;
  claimedSavings: ClaimedSavings;
  /** What could not be read, and what had to be taken otherwise, one line each. */
  remarks: string[];
}

const eventOf = (building: XmlNode) => building.child("ProjectStatus")?.text("EventType");
const dateOf = (building: XmlNode) => building.child("ProjectStatus")?.text("Date")?.slice(0, 10);

function airDistributions(building: XmlNode): XmlNode[] {
  const all = building.at("BuildingDetails", "Systems", "HVAC")?.children("HVACDistribution") ?? [];
  return all.flatMap((each) => each.at("DistributionSystemType", "AirDistribution") ?? []);
}

/**
 * The house of an HPXML file as a job: house, equipment, ducts and measured leakage, before the work and after. Source:
 * hpxml-docs, read with the words of 4.2.
 * @throws InputProblem when the text is no HPXML of version 3 or 4, or when what a job needs is missing in it.
 */
export function readHpxml(text: string): HpxmlReading {
  const document = parseXml(text, "HPXML");
  const { root } = document;
  const version = root.attribute("schemaVersion") ?? "";
  if (!/^[34]\./.test(version)) {
    throw new InputProblem("schema-version-unknown", [
      {
        pointer: "#/HPXML/@schemaVersion",
        detail: `HPXML version “${version}” is not known here`,
        code: "hpxml-version",
        fix: "Export the file as HPXML 4.2.",
      },
    ]);
  }
  const remarks: string[] = [];
  const say = (line: string) => remarks.push(line);
  root.child("XMLTransactionHeaderInformation")?.pass();
  root.child("SoftwareInfo")?.pass();
  const buildings = root.children("Building");
  const first = buildings.find((each) => eventOf(each) === EVENTS.before) ?? buildings[0];
  if (!first) {
    throw new InputProblem("input-unusable", [
      {
        pointer: "#/HPXML/Building",
        detail: "The file has no building",
        code: "hpxml-building",
        fix: "Export a house.",
      },
    ]);
  }
  const after = buildings.find((each) => each !== first && eventOf(each) === EVENTS.after);
  const project = root.at("Project", "ProjectDetails");
  const title = project?.text("Title") ?? first.at("Site", "Address")?.text("Address1") ?? "House of an HPXML file";
  const { systems, places, ducts } = readSystems(first, say);
  const ductsAfter = after ? airDistributions(after) : [];
  const tests = systems.flatMap(({ id: systemId }, index) => {
    const before = readLeakage(ducts[index]!, { systemId, stage: "existing", date: dateOf(first), say });
    const later = ductsAfter[index];
    if (!after || !later) return before;
    return [...before, ...readLeakage(later, { systemId, stage: "retest", date: dateOf(after), say })];
  });
  const job = parseJob(
    withoutGaps({
      schemaVersion: JOB_SCHEMA_VERSION,
      id: ownId(first.child("BuildingID"), "hpxml-house"),
      title,
      date: dateOf(first),
      house: readHouse(first, first.at("Site", "Address")?.text("Address1") ?? title, say),
      places,
      systems,
      tests,
      sites: [],
    }),
  );
  for (const each of buildings) {
    if (each === first) continue;
    each.pass();
    const isAfter = each === after;
    say(
      `${each.path} (${eventOf(each) ?? "no event"}): ${isAfter ? "only its measured duct leakage was read" : "not read"}`,
    );
  }
  const claimedSavings = readClaimedSavings(project, say);
  if (project) {
    project.pass();
    say(
      "HPXML/Project: savings and measures are calculated from the job; only the title and the claimed savings were read",
    );
  }
  for (const { path, values } of document.unread()) {
    if (/(Identifier|ID)$/.test(path)) continue;
    say(`${path}: not read (${values} ${values === 1 ? "value" : "values"})`);
  }
  return { job, claimedSavings, remarks };
}

/** Fields that are not in the file are not in the job. */
function withoutGaps(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value));
}
