import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { XMLParser } from "fast-xml-parser";
import { beforeAll, describe, expect, it } from "vitest";
import { validateXML } from "xmllint-wasm";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { estimate } from "#lib/estimate/estimate.ts";
import { readHpxml } from "#lib/exchange/hpxml/read-hpxml.ts";
import { writeHpxml } from "#lib/exchange/hpxml/write-hpxml.ts";
import type { Job } from "#lib/job/job-schema.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { EXAMPLE_FILES, exampleWithReference } from "#tests/estimate/example-jobs.ts";

const RETEST = "mixed-crawlspace-retest.json";
/** The published schema, HPXML 4.2: HPXML.xsd and what it includes. It is no part of the product. */
const SCHEMA_FOLDER = process.env.HPXML_XSD;

interface Written {
  job: Job;
  result: Result;
  xml: string;
}
const written = new Map<string, Written>();
const get = (file: string) => written.get(file)!;

beforeAll(async () => {
  for (const file of EXAMPLE_FILES) {
    const { job, reference } = await exampleWithReference(file);
    const result = await estimate(job, reference);
    const elevationFt = job.house.elevationFt ?? reference.climate.elevationFt;
    written.set(file, { job, result, xml: writeHpxml({ job, result, elevationFt, date: "2026-11-25" }) });
  }
});

const tree = (xml: string) =>
  new XMLParser({
    ignoreAttributes: false,
    attributeNamePrefix: "@",
    isArray: (name) => ["Building", "DuctLeakageMeasurement", "Ducts", "HVACDistribution"].includes(name),
  }).parse(xml).HPXML;
const airOf = (building: ReturnType<typeof tree>, index = 0) =>
  building.BuildingDetails.Systems.HVAC.HVACDistribution[index].DistributionSystemType.AirDistribution;

describe("HPXML 4.2 out", () => {
  it("names the version by root, namespace and attribute (hpxml-docs, schema 4.2)", () => {
    expect(get(RETEST).xml).toContain('<HPXML xmlns="http://hpxmlonline.com/2023/09" schemaVersion="4.2">');
  });

  it("describes the house before and after a retest, and the sealing between them", () => {
    const { Building, Project } = tree(get(RETEST).xml);
    const [before, after] = Building;
    expect(before.ProjectStatus).toEqual({ EventType: "audit", Date: "2026-11-12" });
    expect(after.ProjectStatus).toEqual({ EventType: "job completion testing/final inspection", Date: "2026-11-20" });
    expect(Project.PreBuildingID["@idref"]).toBe(before.BuildingID["@id"]);
    expect(Project.PostBuildingID["@idref"]).toBe(after.BuildingID["@id"]);
    const { Measure } = Project.ProjectDetails.Measures;
    expect(Measure).toMatchObject({ Status: "Installed", MeasureType: { DuctImprovement: { DuctSealing: true } } });
    const [fuel] = [Project.ProjectDetails.EnergySavingsInfo.FuelSavings].flat();
    expect(fuel).toMatchObject({ Fuel: "electricity", Units: "kWh" });
    expect(fuel.TotalSavings).toBe(get(RETEST).result.savings.electricityKWh.value);
  });

  it("lets only what a test measured carry a test method, with units, value and extent always", () => {
    const { job, result, xml } = get(RETEST);
    const [before, after] = tree(xml).Building;
    const all = [...airOf(before).DuctLeakageMeasurement, ...airOf(after).DuctLeakageMeasurement];
    for (const { DuctLeakage } of all) {
      expect(DuctLeakage.Units).toBe("CFM25");
      expect(DuctLeakage.Value).toBeGreaterThanOrEqual(0);
      expect(["total", "to outside"]).toContain(DuctLeakage.TotalOrToOutside);
    }
    const measured = all.filter((each) => each.DuctLeakageTestMethod === "duct leakage tester");
    expect(measured).toHaveLength(job.tests.length);
    expect(airOf(after).DuctLeakageMeasurement).toHaveLength(1);
    // The fall from before to after is the one that the result claims as verified.
    const total = (building: ReturnType<typeof tree>) =>
      airOf(building).DuctLeakageMeasurement.find(
        (each: Record<string, unknown>) => each.DuctLeakageTestMethod && !each.DuctType,
      ).DuctLeakage.Value;
    expect(total(before) - total(after)).toBeCloseTo(result.verified!.differenceCfm25.value, 0);
  });

  it("claims the house's own air leakage before the work only, and distribution efficiencies at both ends", () => {
    const { result, xml } = get(RETEST);
    const [before, after] = tree(xml).Building;
    expect(before.BuildingDetails.Enclosure.AirInfiltration.AirInfiltrationMeasurement.HousePressure).toBe(50);
    expect(after.BuildingDetails.Enclosure).toBeUndefined();
    const heating = result.systems[0]!.distribution.heating!;
    const efficiency = (building: ReturnType<typeof tree>) =>
      building.BuildingDetails.Systems.HVAC.HVACDistribution[0].AnnualHeatingDistributionSystemEfficiency;
    expect(efficiency(before)).toBe(heating.seasonalBefore.value);
    expect(efficiency(after)).toBe(heating.seasonalAfter.value);
    expect(efficiency(after)).toBeGreaterThan(efficiency(before));
  });

  it("calls the end proposed until there is a retest, with nothing measured there", () => {
    const [, end] = tree(get("cold-attic-furnace.json").xml).Building;
    expect(end.ProjectStatus.EventType).toBe("proposed workscope");
    for (const each of airOf(end).DuctLeakageMeasurement) expect(each.DuctLeakageTestMethod).toBeUndefined();
  });

  // Without the schema there is nothing to ask; a test that is skipped would count as failed.
  if (!SCHEMA_FOLDER) return;
  it("is valid by the published schema, every example", async () => {
    const read = (fileName: string) => ({ fileName, contents: readFileSync(join(SCHEMA_FOLDER, fileName), "utf8") });
    const included = readdirSync(SCHEMA_FOLDER).filter((name) => name.endsWith(".xsd") && name !== "HPXML.xsd");
    const xml = EXAMPLE_FILES.map((file) => ({ fileName: `${file}.xml`, contents: get(file).xml }));
    // A planted fault must be found, else an unread schema would pass everything.
    const faulty = {
      fileName: "faulty.xml",
      contents: get(RETEST).xml.replace("<EventType>audit<", "<EventType>tea<"),
    };
    const options = { schema: read("HPXML.xsd"), preload: included.map(read) };
    expect((await validateXML({ xml: faulty, ...options })).valid).toBe(false);
    const verdict = await validateXML({ xml, ...options });
    expect(verdict.errors.map(({ message }) => message)).toEqual([]);
    expect(verdict.valid).toBe(true);
  }, 60_000);
});

/** What both a job and the standard have a place for. Leaks, instruments, prices and the way of a test are not in it. */
function known({ id, title, date, house, places, systems, tests }: Job) {
  const kinds = new Map(places.map((place) => [place.id, place.kind]));
  const { label: _label, ...rest } = house;
  const common = { kind: 0, zip: 0, elevationFt: 0, conditionedFloorAreaFt2: 0, volumeFt3: 0, storeysCount: 0 };
  const named = { stationId: 0, naturalInfiltrationCfm: 0 };
  const further = { builtYear: 0, bedroomsCount: 0, heatingSetpointF: 0, coolingSetpointF: 0, envelopeLeakageCfm50: 0 };
  return {
    id,
    title,
    date,
    house: Object.fromEntries(
      Object.entries(rest).filter(([name]) => name in common || name in further || name in named),
    ),
    systems: systems.map(({ label: _, blower, airHandlerPlaceId, runs, ...system }) => ({
      ...system,
      airHandler: kinds.get(airHandlerPlaceId ?? ""),
      statics: [blower?.supplyStaticPa, blower?.returnStaticPa],
      runs: runs.map(({ placeId, label: _room, lengthFt: _length, diameterIn: _diameter, material, ...run }) => ({
        ...run,
        place: kinds.get(placeId),
        material: material === "building-cavity" ? undefined : material,
      })),
    })),
    tests: tests
      .filter((test) => test.kind === "total-leakage" || test.kind === "leakage-to-outside")
      .map((test) => [test.kind, test.stage === "final" ? "retest" : test.stage, test.part]),
  };
}

describe("HPXML in", () => {
  it.each(EXAMPLE_FILES)("%s: out and in again keeps every field that both know", (file) => {
    const { job, xml } = get(file);
    const { job: again } = readHpxml(xml);
    const [was, is] = [known(job), known(again)];
    const byTest = (tests: unknown[][]) => tests.map((each) => each.join(" ")).sort();
    const ofOneSystem = job.tests.every(({ systemId }) => systemId !== undefined || job.systems.length === 1);
    if (ofOneSystem) expect(byTest(is.tests)).toEqual(byTest(was.tests));
    expect({ ...is, tests: [] }).toEqual({ ...was, tests: [] });
  });

  it("keeps the weather station and both figures of the house's own leaks, which few jobs have", async () => {
    const { job, result } = get(RETEST);
    const house = { ...job.house, stationId: result.place.stationId, naturalInfiltrationCfm: 61.5 };
    const xml = writeHpxml({ job: { ...job, house }, result, elevationFt: 0, date: "2026-11-25" });
    expect(xml).toContain(`<Name>${result.place.stationTitle}</Name>`);
    const { job: again, remarks } = readHpxml(xml);
    expect(again.house).toMatchObject({
      stationId: result.place.stationId,
      naturalInfiltrationCfm: 61.5,
      envelopeLeakageCfm50: job.house.envelopeLeakageCfm50,
    });
    expect(remarks.join()).not.toContain("WeatherStation");
  });

  it("takes air changes an hour at 50 Pa by the volume: 8 of 15,000 ft³ are 2,000 cfm; other pressures stay unread", () => {
    const house = (unit: string, pressure: string, value: number) =>
      get(RETEST)
        .xml.replaceAll(/<ConditionedBuildingVolume>[^<]*<\/ConditionedBuildingVolume>/g, "")
        .replaceAll(
          "</ConditionedFloorArea>",
          "</ConditionedFloorArea><ConditionedBuildingVolume>15000</ConditionedBuildingVolume>",
        )
        .replace(
          /<HousePressure>50<\/HousePressure>\s*<BuildingAirLeakage>[\s\S]*?<\/BuildingAirLeakage>/,
          `${pressure}<BuildingAirLeakage><UnitofMeasure>${unit}</UnitofMeasure><AirLeakage>${value}</AirLeakage></BuildingAirLeakage>`,
        );
    const at = (pascals: number) => `<HousePressure>${pascals}</HousePressure>`;
    expect(readHpxml(house("ACH", at(50), 8)).job.house.envelopeLeakageCfm50).toBe(2000);
    expect(readHpxml(house("ACHnatural", "", 0.4)).job.house.naturalInfiltrationCfm).toBe(100);
    const { job, remarks } = readHpxml(house("ACH", at(4), 2));
    expect(job.house.envelopeLeakageCfm50).toBeUndefined();
    expect(remarks.join("\n")).toMatch(/Enclosure[^\n]*: not read \(3 values\)/);
  });

  it("takes the measured flow up at 25 Pa, so that the estimate reads the same leakage", async () => {
    const { job, xml } = get("cold-attic-furnace.json");
    const measured = [...xml.matchAll(/duct leakage tester[\s\S]*?<Value>([\d.]+)</g)].map(([, value]) =>
      Number(value),
    );
    const points = readHpxml(xml).job.tests.flatMap<unknown>((test) => ("points" in test ? test.points : []));
    expect(job.tests.length).toBeGreaterThan(0);
    expect(points).toEqual(measured.map((flowCfm) => ({ ductPressurePa: 25, flowCfm })));
  });

  it("lists what it could not read, by place and number of values, and never the same twice", () => {
    const extra = "<Lighting><extension><Mood>dim</Mood><Bulbs>7</Bulbs></extension></Lighting></BuildingDetails>";
    const { remarks } = readHpxml(get(RETEST).xml.replace("</BuildingDetails>", extra));
    expect(remarks).toContain("HPXML/Building[1]/BuildingDetails/Lighting: not read (2 values)");
    expect(remarks.join("\n")).toMatch(/only its measured duct leakage was read/);
    expect(remarks.join("\n")).toMatch(/no test method is named/);
    expect(new Set(remarks).size).toBe(remarks.length);
  });

  it("reads a prefixed namespace, and takes a value without a method for no reading", () => {
    const { xml } = get(RETEST);
    const prefixed = xml
      .replaceAll(/<(\/?)([A-Z])/g, "<$1h:$2")
      .replace(" xmlns=", " xmlns:h=")
      .replaceAll("<h:DuctLeakageTestMethod>duct leakage tester</h:DuctLeakageTestMethod>", "");
    const { job } = readHpxml(prefixed);
    expect(job.systems[0]!.runs).toHaveLength(3);
    expect(job.tests).toEqual([]);
  });

  it.each([
    ["", "nothing"],
    ["<HPXML schemaVersion='4.2'><Building></HPXML>", "elements that cross"],
    ["<Other/>", "another root"],
    ["<HPXML schemaVersion='9.0'/>", "a version of the future"],
    ["<HPXML schemaVersion='4.2'/>", "no building"],
    ["<!DOCTYPE x [<!ENTITY a 'b'>]><HPXML schemaVersion='4.2'/>", "entities of its own"],
  ])("refuses %j (%s) in plain words", (text) => {
    expect(() => readHpxml(text)).toThrow(InputProblem);
  });

  it("says which field of a job is missing when the file has no floor area", () => {
    const without = get(RETEST).xml.replaceAll(/<ConditionedFloorArea>[^<]*<\/ConditionedFloorArea>/g, "");
    try {
      readHpxml(without);
      expect.unreachable();
    } catch (thrown) {
      expect((thrown as InputProblem).errors.map(({ pointer }) => pointer)).toContain(
        "#/house/conditionedFloorAreaFt2",
      );
    }
  });
});
