"use server";

import { redirect } from "next/navigation";
import { learnFromJob } from "#app/jobs/learn-from-job.ts";
import { actAs } from "#app/jobs/session.ts";
import type { MemberActor } from "#lib/access/actor.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { untouchedRepairs, withNewRepairs } from "#lib/scope/own-repairs.ts";
import type { RepairCatalogue } from "#lib/scope/repair-schema.ts";
import { noteDecision, reviseRepairs } from "#lib/scope/revise-repairs.ts";
import type { Scope } from "#lib/store/scope.ts";
import { type RepairDraft, type RepairProblem, readRepairDraft } from "./repair-draft.ts";

export interface SaveRepairReply {
  problems: readonly RepairProblem[];
  /** Somebody else saved first, or nothing was changed: nothing was kept of this one. */
  refused?: string;
}

const today = (): string => new Date().toLocaleDateString("en-CA");

/** The newest version, and what its next one is called; a change made on an older one is a conflict. */
async function newestOf({ repairs }: Scope, { organizationId }: MemberActor, onVersion: number) {
  const newest = await repairs.newest();
  const catalogue: RepairCatalogue = newest
    ? withNewRepairs(newest.catalogue)
    : untouchedRepairs(`repairs-${organizationId.slice(0, 8)}`);
  return { catalogue, usesRetests: newest?.usesRetests ?? false, versionId: String(onVersion + 1) };
}

/** Keeps the figures of one repair as the next version of all. */
export async function saveRepair({
  repairId,
  onVersion,
  draft,
}: {
  repairId: string;
  onVersion: number;
  draft: RepairDraft;
}): Promise<SaveRepairReply> {
  try {
    const problems = await actAs("repairs.edit", async (scope, actor) => {
      const { catalogue, usesRetests, versionId } = await newestOf(scope, actor, onVersion);
      const repair = catalogue.repairs.find(({ id }) => id === repairId);
      if (!repair) throw new InputProblem("not-found", [], "There is no such repair");
      const read = readRepairDraft(repair, draft);
      if ("problems" in read) return read.problems;
      const next = reviseRepairs({
        catalogue,
        repairs: [read.repair],
        versionId,
        date: today(),
        by: actor.name,
        reason: draft.reason.trim(),
      });
      await scope.repairs.add({ catalogue: next, usesRetests });
      await scope.audit.record({ action: "repairs.changed", subjectKind: "repair", subjectId: repairId });
      return [];
    });
    if (problems.length > 0) return { problems };
  } catch (thrown) {
    if (thrown instanceof InputProblem && (thrown.code === "conflict" || thrown.code === "input-unusable"))
      return { problems: [], refused: thrown.errors[0]?.detail ?? thrown.message };
    throw thrown;
  }
  redirect("/repairs");
}

/** Decides whether the organization's own retests move the effects of new jobs, as a version of its own. */
export async function decideLearning(form: FormData): Promise<void> {
  const wanted = form.get("wanted") === "yes";
  await actAs("repairs.edit", async (scope, actor) => {
    const { catalogue, usesRetests, versionId } = await newestOf(scope, actor, Number(form.get("onVersion")));
    if (usesRetests === wanted) return;
    const reason = wanted ? "Our own retests count from now on" : "The catalogue alone counts from now on";
    const next = noteDecision({ catalogue, versionId, date: today(), by: actor.name, reason });
    await scope.repairs.add({ catalogue: next, usesRetests: wanted });
  });
  redirect("/repairs");
}

const MOST_JOBS = 500;

/** Takes in the retests of the newest jobs, such as those that were there before anything was learned. */
export async function lookThroughJobs(): Promise<void> {
  const ids = await actAs("repairs.edit", async ({ jobs }) => {
    const found: string[] = [];
    let cursor: string | null | undefined;
    do {
      const page = await jobs.list({ limit: 50, ...(cursor ? { cursor } : {}) });
      found.push(...page.items.map(({ id }) => id));
      cursor = page.nextCursor;
    } while (cursor && found.length < MOST_JOBS);
    return found;
  });
  for (const id of ids) await learnFromJob(id);
  redirect("/repairs#learned");
}
