import { InputProblem } from "#lib/errors/input-problem.ts";
import { type Repair, type RepairCatalogue, repairCatalogueSchema } from "./repair-schema.ts";

/** Old and new value of every field that differs, as JSON text. */
function changesOf(before: Repair | undefined, after: Repair) {
  const fields = Object.keys(after) as (keyof Repair)[];
  return fields.flatMap((field) => {
    const [was, is] = [JSON.stringify(before?.[field]) ?? "", JSON.stringify(after[field]) ?? ""];
    return was === is ? [] : [{ repairId: after.id, field, before: was, after: is }];
  });
}

/**
 * The next version of a catalogue: repairs added or replaced by id, with who, when, why and what exactly changed.
 * The version it is based on stays as it was, so an old proposal keeps its repairs.
 * @throws InputProblem when the version id was used before, nothing changes, or a repair does not fit the schema.
 */
export function reviseRepairs({
  catalogue,
  repairs,
  versionId,
  date,
  by,
  reason,
}: {
  catalogue: RepairCatalogue;
  repairs: readonly Repair[];
  versionId: string;
  date: string;
  by: string;
  reason: string;
}): RepairCatalogue {
  const usedIds = [catalogue.versionId, ...catalogue.history.map((change) => change.basedOnVersionId)];
  const changes = repairs.flatMap((repair) =>
    changesOf(
      catalogue.repairs.find(({ id }) => id === repair.id),
      repair,
    ),
  );
  const unfit = (pointer: string, detail: string, fix: string): never => {
    throw new InputProblem("input-unusable", [{ pointer, detail, fix, code: "conflict" }]);
  };
  if (usedIds.includes(versionId)) unfit("#/versionId", `Version ${versionId} exists already`, "Name a new version.");
  if (changes.length === 0) unfit("#/repairs", "Nothing is changed", "Change at least one value.");
  const replaced = catalogue.repairs.map((repair) => repairs.find(({ id }) => id === repair.id) ?? repair);
  const added = repairs.filter(({ id }) => !catalogue.repairs.some((repair) => repair.id === id));
  const next = repairCatalogueSchema.safeParse({
    ...catalogue,
    versionId,
    repairs: [...replaced, ...added],
    history: [...catalogue.history, { versionId, basedOnVersionId: catalogue.versionId, date, by, reason, changes }],
  });
  if (next.success) return next.data;
  throw new InputProblem(
    "input-unusable",
    next.error.issues.map(({ path, message, code }) => ({
      pointer: `#/${path.join("/")}`,
      detail: message,
      fix: "Correct the value.",
      code,
    })),
  );
}
