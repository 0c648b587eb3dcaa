import { type ProgramRule, programRuleSchema } from "#lib/claims/program-rule.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import type { Scope } from "#lib/store/scope.ts";

/** The rule that a program had in force on a day. @throws InputProblem when it had none, or one of another version. */
export async function programRuleOn({ programs }: Scope, programId: string, date: Date): Promise<ProgramRule> {
  const { document } = await programs.ruleOn(programId, date);
  const parsed = programRuleSchema.safeParse(document);
  if (parsed.success) return parsed.data;
  throw new InputProblem("schema-version-unknown", [], "The program's rule is of a version that is not known here.");
}
