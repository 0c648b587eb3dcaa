import type { Metadata } from "next";
import Link from "next/link";
import { DemoBanner } from "#app/design/demo-banner.tsx";
import { EmptyState } from "#app/design/empty-state.tsx";
import { Notice } from "#app/design/notice.tsx";
import { showAs } from "#app/jobs/session.ts";
import type { ProgramRule } from "#lib/claims/program-rule.ts";
import { inspectionSampleSize } from "#lib/claims/sampling/inspection-sample-size.ts";
import { sharedStore } from "#lib/store/shared-store.ts";
import { programRuleOn } from "#lib/work/claims/program-rule-on.ts";
import { replayProgramRule } from "#lib/work/claims/replay-program-rule.ts";
import styles from "../program.module.css";
import { Editions } from "./editions.tsx";
import { PutInForce } from "./put-in-force.tsx";
import { ReplayOutcome } from "./replay-outcome.tsx";
import { draftOfRule, draftOfSearch, type RuleSearch, ruleOfDraft } from "./rule-draft.ts";
import { RuleForm, SIZES } from "./rule-form.tsx";

export const metadata: Metadata = { title: "The rule" };

const DAY_MS = 86_400_000;
const isoDay = (time: number): string => new Date(time).toISOString().slice(0, "YYYY-MM-DD".length);

function toInspect({ inspection }: ProgramRule, populationCount: number): number {
  return populationCount < 1 ? 0 : inspectionSampleSize({ populationCount, ...inspection }).sampleCount;
}

/** The program's rule: another one tried over the claims that are there, put in force, and the editions so far. */
export default async function RulesPage({ searchParams }: { searchParams: Promise<RuleSearch> }) {
  const search = await searchParams;
  const { actor, program, rule, rules, log, names, isDemo } = await showAs("program.edit", async (scope, member) => {
    const own = await scope.organizations.own();
    const [first] = (await scope.programs.list()).filter(({ organizationId }) => organizationId === own.id);
    const people = [...(await scope.organizations.partners()), ...(await scope.organizations.members())];
    return {
      actor: member,
      isDemo: own.isDemo,
      program: first,
      rule: first && (await programRuleOn(scope, first.id, new Date())),
      rules: first ? await scope.programs.rules(first.id) : [],
      log: first ? await scope.audit.list({ subjectKind: "program", subjectId: first.id }) : [],
      names: new Map(people.map(({ id, name }) => [id, name])),
    };
  });
  if (!program || !rule)
    return (
      <div className={styles.page}>
        <h1>The rule</h1>
        <EmptyState title="No program yet">A rule belongs to a program.</EmptyState>
      </div>
    );
  const draft = search.tried ? draftOfSearch(search) : draftOfRule(rule);
  const changed = ruleOfDraft(rule, draft);
  const size = SIZES.find(([value]) => value === search.size)?.[0] ?? "1000";
  const most = size === "all" ? Number.POSITIVE_INFINITY : Number(size);
  const replay =
    search.tried && "rule" in changed
      ? await replayProgramRule(await sharedStore(), actor, { programId: program.id, rule: changed.rule, most })
      : null;
  const newest = rules[0]?.effectiveOn.getTime() ?? 0;
  const earliest = isoDay(Math.max(Date.now(), newest + DAY_MS));
  return (
    <>
      {isDemo ? <DemoBanner>The program and its claims are made up.</DemoBanner> : null}
      <div className={styles.page}>
        <p className={styles.over}>
          <Link href="/program">Claims</Link>
        </p>
        <h1>Whom would another rule touch?</h1>
        <p>
          In force: {rule.title}. Change what you think of changing; the claims that stand are gone through with it.
          Nothing is changed by trying, and what was decided stays decided.
        </p>
        {search.done ? (
          <Notice kind="good" title="The new edition is kept. It counts from its first day on." isLive />
        ) : null}
        {typeof search.problem === "string" ? <Notice kind="problem" title={search.problem} isLive /> : null}
        {"problems" in changed ? (
          <Notice kind="problem" title="This is no rule yet." isLive>
            {changed.problems.join(" ")}
          </Notice>
        ) : null}
        <RuleForm draft={draft} size={size} key={JSON.stringify(draft)} />
        {replay && "rule" in changed ? (
          <>
            <ReplayOutcome
              replay={replay}
              names={names}
              sampleSizes={[toInspect(rule, replay.standingCount), toInspect(changed.rule, replay.standingCount)]}
            />
            <PutInForce programId={program.id} draft={draft} earliest={earliest} />
          </>
        ) : null}
        <section aria-labelledby="editions">
          <h2 id="editions">The rule so far</h2>
          <Editions rules={rules} log={log} names={names} />
        </section>
      </div>
    </>
  );
}
