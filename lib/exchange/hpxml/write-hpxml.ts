import { XMLBuilder } from "fast-xml-parser";
import type { Job } from "#lib/job/job-schema.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import type { Feet } from "#lib/units/quantity.ts";
import { identifier, type Tree, xmlIds } from "./hpxml-ids.ts";
import { HPXML_NAMESPACE, HPXML_VERSION } from "./hpxml-words.ts";
import { writeBuilding } from "./write-building.ts";

const CENTS_PER_DOLLAR = 100;

export interface HpxmlRequest {
  job: Job;
  result: Result;
  /** Thins the air that the test fan moved; as the estimate had it. */
  elevationFt: Feet;
  /** YYYY-MM-DD: of the file, and of a visit or retest that carries no date of its own. */
  date: string;
}

function savedFuels({ savings }: Result): Tree[] {
  const fuels = [
    ["electricity", "kWh", savings.electricityKWh.value],
    ["natural gas", "therms", savings.naturalGasTherms.value],
    ["propane", "gal", savings.propaneGallons.value],
    ["fuel oil", "gal", savings.fuelOilGallons.value],
  ] as const;
  return fuels
    .filter(([, , saved]) => saved !== 0)
    .map(([fuel, units, saved]) => ({ Fuel: fuel, Units: units, TotalSavings: saved }));
}

function project({ job, result }: HpxmlRequest, endsAt: "proposed" | "after", date: string): Tree {
  const [before, end] = [xmlIds("before"), xmlIds(endsAt)];
  const ducts = (ids: typeof before) => job.systems.map((_, index) => ({ "@idref": ids.ducts(index + 1) }));
  const isDone = endsAt === "after";
  return {
    ProjectID: identifier("project", job.id),
    PreBuildingID: { "@idref": before.building },
    PostBuildingID: { "@idref": end.building },
    ProjectDetails: {
      Title: job.title,
      CompleteDateActual: isDone ? date : undefined,
      EnergySavingsInfo: {
        EnergySavingsType: "estimated",
        EnergySavingsReported: "gross",
        FuelSavings: savedFuels(result),
        DemandSavings: result.savings.peakKW.value,
      },
      Measures: {
        Measure: {
          MeasureSystemIdentifiers: { SystemIdentifiersInfo: identifier("measure.duct-sealing") },
          MeasureDescription: "Duct sealing",
          EstimatedLife: result.economics.measureLifeYears,
          InstallationDate: isDone ? date : undefined,
          Cost: result.economics.costUsdCents / CENTS_PER_DOLLAR,
          Status: isDone ? "Installed" : "Recommended",
          MeasureType: { DuctImprovement: { DuctSealing: true } },
          ReplacedComponents: { ReplacedComponent: ducts(before) },
          InstalledComponents: { InstalledComponent: ducts(end) },
        },
      },
    },
  };
}

/**
 * A job with its result as HPXML 4.2: the house before, the house after (measured once a retest is in, proposed until
 * then), and the project between them with the sealing and what it saves. Source: hpxml-docs. Left out, for the standard
 * has no place for it: readings step by step, fan flow, zone pressures, leaks one by one, ranges, prices by line; of what
 * it has a place for: attic insulation and roof color, bills.
 */
export function writeHpxml(request: HpxmlRequest): string {
  const { job, result, date } = request;
  const isVerified = result.basis === "verified";
  const endsAt = isVerified ? "after" : "proposed";
  const retest = job.tests.filter(({ stage }) => stage === "retest" || stage === "final").at(-1);
  const endDate = (isVerified ? retest?.date : undefined) ?? date;
  const document = {
    "?xml": { "@version": "1.0", "@encoding": "UTF-8" },
    HPXML: {
      "@xmlns": HPXML_NAMESPACE,
      "@schemaVersion": HPXML_VERSION,
      XMLTransactionHeaderInformation: {
        XMLType: "HPXML",
        XMLGeneratedBy: `Ductmend ${result.engineVersion}`,
        CreatedDateAndTime: `${date}T00:00:00`,
        Transaction: "create",
      },
      SoftwareInfo: { SoftwareProgramUsed: "Ductmend", SoftwareProgramVersion: result.engineVersion },
      Building: [
        writeBuilding({ ...request, moment: "before", date: job.date ?? date }),
        writeBuilding({ ...request, moment: endsAt, date: endDate }),
      ],
      Project: project(request, endsAt, endDate),
    },
  };
  return new XMLBuilder({
    ignoreAttributes: false,
    attributeNamePrefix: "@",
    format: true,
    suppressBooleanAttributes: false,
  }).build(document);
}
