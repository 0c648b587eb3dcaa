import { canonicalJson } from "#lib/hash/content-hash.ts";
import type { JobRepairs, RepairFigures } from "#lib/job/repair-figures.ts";
import type { Repair, RepairCatalogue } from "./repair-schema.ts";
import { STARTING_CATALOGUE } from "./repairs.ts";

const FIGURES = ["isOffered", "remainingShare", "remainingSpreadShare", "labourHours", "materials"] as const;

/** A database gives the keys of a record back in an order of its own. */
const isSame = (one: unknown, other: unknown): boolean =>
  other !== undefined && canonicalJson(one) === canonicalJson(other);

/** The figures in which an organization's repair differs from the one that the product starts with. */
function ownFigures(repair: Repair): RepairFigures | null {
  const start = STARTING_CATALOGUE.repairs.find(({ id }) => id === repair.id);
  const differing = FIGURES.filter((name) => repair[name] !== undefined && !isSame(repair[name], start?.[name]));
  if (differing.length === 0) return null;
  return { repairId: repair.id, ...Object.fromEntries(differing.map((name) => [name, repair[name]])) };
}

/** An organization's repairs in the short form that a job carries. */
export function repairsForJob(catalogue: RepairCatalogue, retestsCount = 0): JobRepairs {
  return {
    catalogueId: catalogue.id,
    versionId: catalogue.versionId,
    ...(retestsCount > 0 ? { retestsCount } : {}),
    figures: catalogue.repairs.map(ownFigures).filter((figures) => figures !== null),
  };
}

/**
 * The repairs that a job is planned with: the catalogue that the product starts with, with the figures that the job
 * carries put in. What the crew does not offer is left out.
 */
export function catalogueOfJob({ repairs: own }: { repairs?: JobRepairs }): RepairCatalogue {
  if (!own) return STARTING_CATALOGUE;
  const figuresOf = new Map(own.figures.map(({ repairId, ...figures }) => [repairId, figures]));
  const repairs = STARTING_CATALOGUE.repairs
    .map((repair): Repair => ({ ...repair, ...figuresOf.get(repair.id) }))
    .filter(({ isOffered }) => isOffered !== false);
  return { ...STARTING_CATALOGUE, id: own.catalogueId, versionId: own.versionId, repairs };
}
