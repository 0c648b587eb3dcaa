"use server";

import { redirect } from "next/navigation";
import { actAs, whoActs } from "#app/jobs/session.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { sharedStore } from "#lib/store/shared-store.ts";
import { programRuleOn } from "#lib/work/claims/program-rule-on.ts";
import { putRuleInForce } from "#lib/work/claims/put-rule-in-force.ts";
import { draftOfSearch, RULE_FIELDS, ruleOfDraft } from "./rule-draft.ts";

const today = (): string => new Date().toISOString().slice(0, "YYYY-MM-DD".length);

/** The rule that was tried becomes an edition of its own. What keeps it from that is said on the page, as it was tried. */
export async function putInForce(form: FormData): Promise<void> {
  const [store, actor] = [await sharedStore(), await whoActs()];
  const text = (name: string) => String(form.get(name) ?? "");
  const programId = text("programId");
  const sent = Object.fromEntries(RULE_FIELDS.map((name) => [name, form.getAll(name).map(String)]));
  const held = await actAs("program.edit", (scope) => programRuleOn(scope, programId, new Date()));
  const changed = ruleOfDraft(held, draftOfSearch(sent));
  let problem = "problems" in changed ? changed.problems.join(" ") : "";
  if ("rule" in changed)
    try {
      const edition = {
        programId,
        rule: changed.rule,
        effectiveOn: text("effectiveOn").trim(),
        reason: text("reason"),
      };
      await putRuleInForce(store, actor, edition, today());
    } catch (thrown) {
      if (!(thrown instanceof InputProblem) || thrown.code === "not-allowed") throw thrown;
      problem = thrown.errors.map(({ detail, fix }) => `${detail}. ${fix}`).join(" ");
    }
  if (problem === "") redirect("/program/rules?done=yes");
  const query = new URLSearchParams(Object.entries(sent).flatMap(([name, list]) => list.map((each) => [name, each])));
  query.set("tried", "yes");
  query.set("problem", problem);
  redirect(`/program/rules?${query}`);
}
