import type { Metadata } from "next";
import Form from "next/form";
import Link from "next/link";
import { Button } from "#app/design/button.tsx";
import { DataTable } from "#app/design/data-table.tsx";
import { DemoBanner } from "#app/design/demo-banner.tsx";
import { EmptyState } from "#app/design/empty-state.tsx";
import { Notice } from "#app/design/notice.tsx";
import { StatGrid } from "#app/design/stat-block.tsx";
import { TextField } from "#app/design/text-field.tsx";
import { showAs } from "#app/jobs/session.ts";
import { sharedStore } from "#lib/store/shared-store.ts";
import { formatUsdCents } from "#lib/units/format.ts";
import { programRuleOn } from "#lib/work/claims/program-rule-on.ts";
import { replayProgramRule } from "#lib/work/claims/replay-program-rule.ts";
import styles from "../program.module.css";
import { changedRule, draftOfRule, type RuleSearch } from "./rule-draft.ts";

export const metadata: Metadata = { title: "Change of the rule" };

const change = (before: number, after: number, format: (value: number) => string) =>
  before === after ? format(before) : `${format(before)} → ${format(after)}`;

const claims = (count: number) => (count === 1 ? "claim" : "claims");

/** A change of the program's rule, tried over the claims that are there: whom would it touch? */
export default async function RulesPage({ searchParams }: { searchParams: Promise<RuleSearch> }) {
  const search = await searchParams;
  const shown = await showAs("program.edit", async (scope, actor) => {
    const [program] = await scope.programs.list();
    const own = await scope.organizations.own();
    return {
      actor,
      isDemo: own.isDemo,
      program,
      rule: program && (await programRuleOn(scope, program.id, new Date())),
      names: new Map((await scope.organizations.partners()).map(({ id, name }) => [id, name])),
    };
  });
  const { actor, program, rule, names, isDemo } = shown;
  if (!program || !rule)
    return (
      <div className={styles.page}>
        <h1>Change of the rule</h1>
        <EmptyState title="No program yet">A rule belongs to a program.</EmptyState>
      </div>
    );
  const changed = changedRule(rule, search);
  const draft = { ...draftOfRule(rule), ...search };
  const replay =
    search.tried && "rule" in changed
      ? await replayProgramRule(await sharedStore(), actor, { programId: program.id, rule: changed.rule })
      : null;
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
          Nothing is changed by that, and what was decided stays decided.
        </p>
        {"problems" in changed && search.tried ? (
          <Notice kind="problem" title="This is no rule yet." isLive>
            {changed.problems.join(" ")}
          </Notice>
        ) : null}
        <Form action="/program/rules" className={styles.filters}>
          <input type="hidden" name="tried" value="yes" />
          <TextField
            label="Dollars for each cfm at 25 Pa removed"
            name="eachUsd"
            inputMode="decimal"
            defaultValue={draft.eachUsd}
          />
          <TextField label="At most, in dollars" name="mostUsd" inputMode="decimal" defaultValue={draft.mostUsd} />
          <TextField
            label="Removed at least, in percent"
            name="leastPercent"
            inputMode="decimal"
            defaultValue={draft.leastPercent}
          />
          <TextField label="Photos of each repair" name="photos" inputMode="numeric" defaultValue={draft.photos} />
          <Button type="submit">Try it</Button>
        </Form>
        {replay ? (
          <>
            <StatGrid
              stats={[
                {
                  id: "all",
                  label: "Gone through",
                  value: String(replay.replayedCount),
                  unit: claims(replay.replayedCount),
                },
                {
                  id: "touched",
                  label: "Touched",
                  value: String(replay.touchedCount),
                  unit: claims(replay.touchedCount),
                },
                {
                  id: "before",
                  label: "Rebates by the rules they came under",
                  value: formatUsdCents(replay.rebatesBeforeUsdCents),
                },
                { id: "after", label: "By the rule tried", value: formatUsdCents(replay.rebatesAfterUsdCents) },
              ]}
            />
            {replay.isCut ? (
              <p>There are more claims; these are the first {replay.replayedCount.toLocaleString("en-US")}.</p>
            ) : null}
            {replay.touched.length === 0 ? (
              <p>It would touch no claim.</p>
            ) : (
              <DataTable
                caption="Claims that it would touch"
                isCardsWhenNarrow
                columns={[
                  { label: "Claim" },
                  { label: "Contractor" },
                  { label: "Rebate", isNumeric: true },
                  { label: "Evidence missing", isNumeric: true },
                  { label: "May take part" },
                ]}
                rows={replay.touched.map(({ id, reference, contractorId, before, after }) => ({
                  id,
                  cells: [
                    <Link key="link" href={`/program/claims/${id}`}>
                      {reference}
                    </Link>,
                    names.get(contractorId) ?? "Another contractor",
                    change(before.rebateUsdCents, after.rebateUsdCents, formatUsdCents),
                    change(before.missingEvidenceCount, after.missingEvidenceCount, String),
                    after.outside.join(". ") || "yes",
                  ],
                }))}
              />
            )}
          </>
        ) : null}
      </div>
    </>
  );
}
