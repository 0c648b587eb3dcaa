import { inputProblemFromZod } from "#lib/errors/from-zod.ts";
import { type FieldProblem, InputProblem } from "#lib/errors/input-problem.ts";
import { checkLeakParts } from "./check-leak-parts.ts";
import { checkOtherMeasures } from "./check-other-measures.ts";
import { checkRates } from "./check-rates.ts";
import { JOB_SCHEMA_VERSION, type Job, jobSchema } from "./job-schema.ts";
import { checkWeatherYear } from "./weather-year.ts";

type Ids = ReadonlySet<string>;

function findRepeatedIds(items: readonly { id: string }[], pointer: string, what: string): FieldProblem[] {
  const seen = new Set<string>();
  const problems: FieldProblem[] = [];
  items.forEach(({ id }, index) => {
    if (seen.has(id)) {
      problems.push({
        pointer: `${pointer}/${index}/id`,
        detail: `The id “${id}” stands twice among the ${what}`,
        code: "id-repeated",
        fix: "Give each its own id.",
      });
    }
    seen.add(id);
  });
  return problems;
}

function checkLink({
  id,
  known,
  pointer,
  what,
}: {
  id: string | undefined;
  known: Ids;
  pointer: string;
  what: string;
}): FieldProblem[] {
  if (id === undefined || known.has(id)) return [];
  const list = [...known].slice(0, 8).join(", ") || "none";
  return [
    {
      pointer,
      detail: `No ${what} has the id “${id}”`,
      code: "link-broken",
      fix: `Use one of these, or add the ${what} first: ${list}.`,
    },
  ];
}

function checkSystems(job: Job, places: Ids): FieldProblem[] {
  return job.systems.flatMap((system, index) => {
    const pointer = `#/systems/${index}`;
    const problems = [
      ...findRepeatedIds(system.runs, `${pointer}/runs`, "duct runs"),
      ...checkLink({
        id: system.airHandlerPlaceId,
        known: places,
        pointer: `${pointer}/airHandlerPlaceId`,
        what: "place",
      }),
      ...system.runs.flatMap((run, at) =>
        checkLink({ id: run.placeId, known: places, pointer: `${pointer}/runs/${at}/placeId`, what: "place" }),
      ),
    ];
    if (!system.heating && !system.cooling) {
      problems.push({
        pointer: `${pointer}/heating`,
        detail: "The system neither heats nor cools",
        code: "equipment-missing",
        fix: "Describe its heating or its cooling equipment.",
      });
    }
    return problems;
  });
}

function checkTests(job: Job, systems: Ids): FieldProblem[] {
  const fans = new Map((job.instruments?.fans ?? []).map((fan) => [fan.id, fan]));
  const gauges = new Set((job.instruments?.gauges ?? []).map((gauge) => gauge.id));
  return job.tests.flatMap((test, index) => {
    const pointer = `#/tests/${index}`;
    const problems = [
      ...checkLink({ id: test.systemId, known: systems, pointer: `${pointer}/systemId`, what: "system" }),
      ...checkLink({ id: test.fanId, known: new Set(fans.keys()), pointer: `${pointer}/fanId`, what: "test fan" }),
      ...checkLink({ id: test.gaugeId, known: gauges, pointer: `${pointer}/gaugeId`, what: "gauge" }),
    ];
    if (test.kind !== "total-leakage" && test.kind !== "leakage-to-outside") return problems;
    const calibrations = (test.fanId ? fans.get(test.fanId)?.calibrations : undefined) ?? [];
    const restrictors = new Set(
      calibrations.filter((row) => row.direction === test.direction).map((row) => row.restrictorId),
    );
    test.points.forEach((point, at) => {
      const here = `${pointer}/points/${at}`;
      if (point.flowCfm === undefined && point.fanPressurePa === undefined) {
        problems.push({
          pointer: `${here}/flowCfm`,
          detail: "The step has neither a flow nor a fan pressure",
          code: "reading-missing",
          fix: "Enter the fan flow, or the fan pressure with its restrictor.",
        });
      }
      if (point.flowCfm === undefined && point.fanPressurePa !== undefined) {
        if (test.fanId === undefined)
          problems.push({
            pointer: `${pointer}/fanId`,
            detail: "A fan pressure needs the fan's calibration",
            code: "instrument-missing",
            fix: "Name the test fan, or enter the fan flow itself.",
          });
        else if (point.restrictorId === undefined)
          problems.push({
            pointer: `${here}/restrictorId`,
            detail: "A fan pressure needs to know which flow restrictor was on",
            code: "restrictor-missing",
            fix: `Name the restrictor: ${[...restrictors].join(", ")}.`,
          });
        else
          problems.push(
            ...checkLink({
              id: point.restrictorId,
              known: restrictors,
              pointer: `${here}/restrictorId`,
              what: "flow restrictor calibrated for this direction",
            }),
          );
      }
      // To outside, zero between ducts and house is what the test wants.
      if (test.kind === "total-leakage" && point.ductPressurePa === 0)
        problems.push({
          pointer: `${here}/ductPressurePa`,
          detail: "A duct pressure of 0 Pa says nothing of the leakage",
          code: "pressure-zero",
          fix: "Enter the pressure that stood in the duct, with its sign.",
        });
    });
    return problems;
  });
}

function checkSites(job: Job, systems: Ids, places: Ids): FieldProblem[] {
  const siteIds = new Set(job.sites.map((site) => site.id));
  return [
    ...job.sites.flatMap((site, index) => [
      ...checkLink({ id: site.systemId, known: systems, pointer: `#/sites/${index}/systemId`, what: "system" }),
      ...checkLink({ id: site.placeId, known: places, pointer: `#/sites/${index}/placeId`, what: "place" }),
    ]),
    ...(job.plan?.chosenMeasures ?? []).flatMap((measure, index) =>
      checkLink({ id: measure.siteId, known: siteIds, pointer: `#/plan/chosenMeasures/${index}/siteId`, what: "leak" }),
    ),
  ];
}

/** What the schema alone cannot say: links that lead nowhere, ids that stand twice, readings without an instrument. */
export function findJobProblems(job: Job): FieldProblem[] {
  const places = new Set(job.places.map((place) => place.id));
  const systems = new Set(job.systems.map((system) => system.id));
  const problems = [
    ...findRepeatedIds(job.places, "#/places", "places"),
    ...findRepeatedIds(job.systems, "#/systems", "systems"),
    ...findRepeatedIds(job.tests, "#/tests", "tests"),
    ...findRepeatedIds(job.sites, "#/sites", "leaks"),
    ...checkSystems(job, places),
    ...checkTests(job, systems),
    ...checkSites(job, systems, places),
    ...checkLeakParts(job.sites),
    ...checkRates(job.rates),
    ...findRepeatedIds(job.plan?.otherMeasures ?? [], "#/plan/otherMeasures", "other measures"),
    ...checkOtherMeasures(job.plan?.otherMeasures),
    ...checkWeatherYear(job.house.weatherYear),
  ];
  const { house } = job;
  if (!house.zip && !house.stationId) {
    problems.push({
      pointer: "#/house/zip",
      detail: "Nothing says where the house stands",
      code: "place-missing",
      fix: "Enter the ZIP code, or name a weather station.",
    });
  }
  if (
    house.volumeFt3 !== undefined &&
    !(house.volumeFt3 >= 5 * house.conditionedFloorAreaFt2 && house.volumeFt3 <= 30 * house.conditionedFloorAreaFt2)
  ) {
    problems.push({
      pointer: "#/house/volumeFt3",
      detail: `A volume of ${house.volumeFt3} ft³ does not fit a floor of ${house.conditionedFloorAreaFt2} ft²`,
      code: "does-not-fit",
      fix: "Enter floor area times ceiling height, or leave the volume out.",
    });
  }
  return problems;
}

/**
 * Reads a job document: schema, then links between its parts. Nothing is filled in here: what is missing stays missing
 * until the estimate assumes it aloud.
 * @throws InputProblem that names each field, its value, what is allowed and what to do.
 */
export function parseJob(document: unknown): Job {
  const version = (document as { schemaVersion?: unknown } | null)?.schemaVersion;
  if (typeof version === "string" && version !== JOB_SCHEMA_VERSION) {
    throw new InputProblem("schema-version-unknown", [
      {
        pointer: "#/schemaVersion",
        detail: `“${version}” is not a version this program reads`,
        code: "version-unknown",
        fix: `Use “${JOB_SCHEMA_VERSION}”.`,
      },
    ]);
  }
  const parsed = jobSchema.safeParse(document);
  if (!parsed.success) throw inputProblemFromZod({ error: parsed.error, schema: jobSchema, input: document });
  const problems = findJobProblems(parsed.data);
  if (problems.length > 0) throw new InputProblem("input-unusable", problems);
  return parsed.data;
}
