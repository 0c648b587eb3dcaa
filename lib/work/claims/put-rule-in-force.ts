import type { MemberActor } from "#lib/access/actor.ts";
import { requireAllowed } from "#lib/access/can.ts";
import { type ProgramRule, programRuleSchema } from "#lib/claims/program-rule.ts";
import { inputProblemFromZod } from "#lib/errors/from-zod.ts";
import { refuse } from "#lib/errors/input-problem.ts";
import type { Store } from "#lib/store/open-store.ts";

export interface NewEdition {
  programId: string;
  rule: ProgramRule;
  /** First day on which work counts by it, YYYY-MM-DD. */
  effectiveOn: string;
  reason: string;
}

const LONGEST_REASON = 500;

/**
 * Puts a rule in force from a day on. The earlier editions stay, and work done before that day stays under them; so the
 * day is neither past nor before that of another edition. Kept with its reason in the audit log.
 * @throws InputProblem when the actor may not, a reason or a usable day is missing, or the rule cannot be read.
 */
export async function putRuleInForce(
  store: Store,
  actor: MemberActor,
  { programId, rule, effectiveOn, reason }: NewEdition,
  today: string,
): Promise<void> {
  requireAllowed(actor, "program.edit");
  const parsed = programRuleSchema.safeParse(rule);
  if (!parsed.success) throw inputProblemFromZod({ error: parsed.error, schema: programRuleSchema, input: rule });
  const why = reason.trim().slice(0, LONGEST_REASON);
  if (why === "")
    refuse({ field: "reason", detail: "No reason is given", fix: "Say in a few words why the rule changes." });
  if (!/^\d{4}-\d{2}-\d{2}$/.test(effectiveOn) || !(effectiveOn >= today))
    refuse({
      field: "effectiveOn",
      detail: `A rule cannot begin on ${effectiveOn || "no day"}`,
      fix: `Enter a day from ${today} on: work that is done stays under the rule it was done by.`,
    });
  await store.withOrganization(actor, async ({ programs, audit, takeTurn }) => {
    await takeTurn(`rule ${programId}`);
    const newest = (await programs.rules(programId))[0]?.effectiveOn.toISOString().slice(0, effectiveOn.length);
    if (newest !== undefined && !(effectiveOn > newest))
      refuse({
        field: "effectiveOn",
        detail: `Another edition begins on ${newest}`,
        fix: "Enter a later day: editions follow one another.",
      });
    const id = crypto.randomUUID();
    await programs.addRule({ id, programId, effectiveOn: new Date(effectiveOn), document: parsed.data });
    await audit.record({
      action: "program.rule-put-in-force",
      subjectKind: "program",
      subjectId: programId,
      detail: { effectiveOn, reason: why, ruleId: id, title: parsed.data.title },
    });
  });
}
