import type { MemberActor } from "#lib/access/actor.ts";
import { requireAllowed } from "#lib/access/can.ts";
import type { Claim } from "#lib/claims/claim-schema.ts";
import { isStillStanding } from "#lib/claims/claim-state.ts";
import { type ProgramRule, programRuleSchema } from "#lib/claims/program-rule.ts";
import { type RuleTouch, replayRule } from "#lib/claims/replay-rule.ts";
import { type RuleChange, ruleChanges } from "#lib/claims/rule-changes.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import type { Store } from "#lib/store/open-store.ts";
import type { JobRecord, JobState } from "#lib/store/repositories/jobs.ts";
import { RULE_SEEN, type RuleEdition } from "#lib/store/repositories/programs.ts";
import type { Scope } from "#lib/store/scope.ts";
import { completionDate } from "./submit-claim.ts";

/** A new edition of a program's rule, as a contractor is told of it. */
export interface RuleNotice {
  ruleId: string;
  programId: string;
  programName: string;
  title: string;
  effectiveOn: Date;
  changes: readonly RuleChange[];
  isSeen: boolean;
}

/** Whom of this contractor a new edition touches. */
export interface RuleReach {
  notice: RuleNotice;
  /** Jobs whose work is still to do, or was done from its first day on. */
  jobs: readonly (Pick<JobRecord, "id" | "title" | "state"> & { mayTakePart: boolean })[];
  /** Standing claims whose work was done from its first day on. */
  claims: readonly (RuleTouch & { id: string; reference: string })[];
  /** True: there are more of them than are shown. */
  hasMore: boolean;
}

const DAY = "YYYY-MM-DD".length;
const MOST_SHOWN = 100;
const OPEN_STATES: readonly JobState[] = ["draft", "proposed", "accepted", "sealed", "verified"];

function readRules({ document, previous }: RuleEdition): { from: ProgramRule; to: ProgramRule } | null {
  const [from, to] = [programRuleSchema.safeParse(previous.document), programRuleSchema.safeParse(document)];
  return from.success && to.success ? { from: from.data, to: to.data } : null;
}

function noticeOf(edition: RuleEdition & { isSeen: boolean }): RuleNotice {
  const { id: ruleId, programId, programName, effectiveOn, isSeen } = edition;
  const rules = readRules(edition);
  const changes = rules ? ruleChanges(rules.from, rules.to) : [];
  return { ruleId, programId, programName, title: rules?.to.title ?? "", effectiveOn, changes, isSeen };
}

/** New editions that nobody of this contractor has marked as seen, the newest first. */
export async function unseenRules({ programs }: Scope): Promise<RuleNotice[]> {
  return (await programs.laterEditions()).filter(({ isSeen }) => !isSeen).map(noticeOf);
}

/** Work done before the first day of an edition stays under the one before; without a retest it is still to come. */
async function openJobs({ jobs }: Scope, effectiveOn: Date, rule: ProgramRule) {
  const firstDay = effectiveOn.toISOString().slice(0, DAY);
  const touched: RuleReach["jobs"][number][] = [];
  let hasMore = false;
  for (const state of OPEN_STATES) {
    const page = await jobs.list({ state, limit: MOST_SHOWN });
    hasMore ||= page.nextCursor !== undefined;
    for (const { id, title } of page.items) {
      const { revision } = await jobs.findCurrent(id);
      if (!revision) continue;
      const job = readJob(revision.document);
      if (!job || !(completionDate(job, firstDay) >= firstDay)) continue;
      touched.push({ id, title, state, mayTakePart: rule.houseKinds.includes(job.house.kind) });
    }
  }
  return { touched, hasMore };
}

/** A draft need not be whole yet. */
function readJob(document: unknown) {
  try {
    return parseJob(document);
  } catch (thrown) {
    if (thrown instanceof InputProblem) return null;
    throw thrown;
  }
}

/** One new edition with the open jobs and the claims handed in that it touches. @throws InputProblem `not-found`. */
export async function ruleReach(scope: Scope, ruleId: string): Promise<RuleReach> {
  const edition = (await scope.programs.laterEditions()).find(({ id }) => id === ruleId);
  const rules = edition && readRules(edition);
  if (!edition || !rules) throw new InputProblem("not-found", [], "There is no such edition of a rule.");
  const { effectiveOn, programId } = edition;
  const { touched, hasMore } = await openJobs(scope, effectiveOn, rules.to);
  const page = await scope.claims.list({ programId, completedFrom: effectiveOn, limit: MOST_SHOWN });
  const claims: RuleReach["claims"][number][] = [];
  for (const { id, reference, state } of page.items) {
    if (!isStillStanding(state)) continue;
    const { packet } = await scope.claims.find(id);
    // A stored packet was read by its schema when it came in.
    claims.push({ id, reference, ...replayRule(JSON.parse(packet) as Claim, rules.from, rules.to) });
  }
  return { notice: noticeOf(edition), jobs: touched, claims, hasMore: hasMore || page.nextCursor !== undefined };
}

/** Keeps in the record that this contractor has read of a new edition; the program sees it there too. */
export async function markRuleSeen(store: Store, actor: MemberActor, ruleId: string): Promise<void> {
  requireAllowed(actor, "claim.submit");
  await store.withOrganization(actor, async ({ programs, audit, takeTurn }) => {
    await takeTurn(`rule seen ${ruleId}`);
    const edition = (await programs.laterEditions()).find(({ id }) => id === ruleId);
    if (!edition) throw new InputProblem("not-found", [], "There is no such edition of a rule.");
    if (edition.isSeen) return;
    const program = (await programs.list()).find(({ id }) => id === edition.programId);
    await audit.record({
      ...RULE_SEEN,
      subjectId: ruleId,
      detail: { programId: edition.programId, effectiveOn: edition.effectiveOn.toISOString().slice(0, DAY) },
      ...(program && { programOrganizationId: program.organizationId }),
    });
  });
}
