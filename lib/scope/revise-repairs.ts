import { InputProblem } from "#lib/errors/input-problem.ts";
import { canonicalJson } from "#lib/hash/content-hash.ts";
import {
  type Repair,
  type RepairCatalogue,
  type RepairCatalogueChange,
  repairCatalogueSchema,
} from "./repair-schema.ts";

const textOf = (value: unknown): string => (value === undefined ? "" : canonicalJson(value));

/** Old and new value of every field that differs, as JSON text. */
function changesOf(before: Repair | undefined, after: Repair) {
  const fields = Object.keys(after) as (keyof Repair)[];
  return fields.flatMap((field) => {
    const [was, is] = [textOf(before?.[field]), textOf(after[field])];
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
  if (usedIds.includes(versionId)) unfit("#/versionId", `Version ${versionId} exists already`, "Name a new version.");
  if (changes.length === 0) unfit("#/repairs", "Nothing is changed", "Change at least one value.");
  const replaced = catalogue.repairs.map((repair) => repairs.find(({ id }) => id === repair.id) ?? repair);
  const added = repairs.filter(({ id }) => !catalogue.repairs.some((repair) => repair.id === id));
  return checked({
    ...catalogue,
    versionId,
    repairs: [...replaced, ...added],
    history: [...catalogue.history, { versionId, basedOnVersionId: catalogue.versionId, date, by, reason, changes }],
  });
}

/** The next version of a catalogue in which no figure changes: a decision about how it is used, with who and why. */
export function noteDecision({
  catalogue,
  ...note
}: { catalogue: RepairCatalogue } & Pick<
  RepairCatalogueChange,
  "versionId" | "date" | "by" | "reason"
>): RepairCatalogue {
  const change: RepairCatalogueChange = { ...note, basedOnVersionId: catalogue.versionId, changes: [] };
  return checked({ ...catalogue, versionId: note.versionId, history: [...catalogue.history, change] });
}

function unfit(pointer: string, detail: string, fix: string): never {
  throw new InputProblem("input-unusable", [{ pointer, detail, fix, code: "conflict" }]);
}

function checked(catalogue: RepairCatalogue): RepairCatalogue {
  const next = repairCatalogueSchema.safeParse(catalogue);
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
