import type { Metadata } from "next";
import Link from "next/link";
import { Button } from "#app/design/button.tsx";
import { DataTable } from "#app/design/data-table.tsx";
import { DemoBanner } from "#app/design/demo-banner.tsx";
import { Notice } from "#app/design/notice.tsx";
import { JOB_STATE_WORDS } from "#app/jobs/job-states.ts";
import { showAs } from "#app/jobs/session.ts";
import { day } from "#app/program/claim-words.ts";
import styles from "#app/program/program.module.css";
import { formatUsdCents } from "#lib/units/format.ts";
import { type RuleReach, ruleReach } from "#lib/work/claims/rule-notices.ts";
import { markSeen } from "./actions.ts";

export const metadata: Metadata = { title: "A new rule" };

function OpenJobs({ jobs }: { jobs: RuleReach["jobs"] }) {
  if (jobs.length === 0) return <p>It touches no open job of yours.</p>;
  return (
    <DataTable
      caption="Open jobs whose work counts by it, if you hand them in there"
      isCardsWhenNarrow
      columns={[{ label: "Job" }, { label: "Where it stands" }, { label: "May take part" }]}
      rows={jobs.map(({ id, title, state, mayTakePart }) => ({
        id,
        cells: [
          <Link key="link" href={`/jobs/${id}`}>
            {title}
          </Link>,
          JOB_STATE_WORDS[state],
          mayTakePart ? "yes" : "no: not this kind of house",
        ],
      }))}
    />
  );
}

function HandedIn({ claims, from }: { claims: RuleReach["claims"]; from: string }) {
  if (claims.length === 0)
    return <p>It touches no claim that you handed in: work done before {from} stays under the rule before.</p>;
  return (
    <DataTable
      caption="Claims handed in that count by it"
      isCardsWhenNarrow
      columns={[
        { label: "Claim" },
        { label: "Rebate by the rule before", isNumeric: true },
        { label: "By this rule", isNumeric: true },
        { label: "Evidence missing", isNumeric: true },
        { label: "May take part" },
      ]}
      rows={claims.map(({ id, reference, before, after }) => ({
        id,
        cells: [
          <Link key="link" href={`/program/claims/${id}`}>
            {reference}
          </Link>,
          formatUsdCents(before.rebateUsdCents),
          formatUsdCents(after.rebateUsdCents),
          String(after.missingEvidenceCount),
          after.outside.join(". ") || "yes",
        ],
      }))}
    />
  );
}

/** What a new edition of a program's rule makes different, and which of the firm's jobs and claims it touches. */
export default async function ChangedRulePage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params;
  const { reach, isDemo } = await showAs("claim.submit", async (scope) => ({
    reach: await ruleReach(scope, id),
    isDemo: (await scope.organizations.own()).isDemo,
  }));
  const { notice, jobs, claims, hasMore } = reach;
  const from = day(notice.effectiveOn);
  return (
    <>
      {isDemo ? <DemoBanner>The program, its rules and the jobs are made up.</DemoBanner> : null}
      <div className={styles.page}>
        <p className={styles.over}>
          <Link href="/program">Claims</Link>
        </p>
        <h1>{notice.programName}: a new rule</h1>
        <p>
          {notice.title}. It counts for work done from {from} on; work done before that day stays under the rule before.
        </p>
        {notice.changes.length === 0 ? (
          <p>Only its title is another.</p>
        ) : (
          <DataTable
            caption="What changes"
            isCardsWhenNarrow
            columns={[{ label: "What" }, { label: "Before" }, { label: `From ${from} on` }]}
            rows={notice.changes.map(({ what, was, is }) => ({ id: what, cells: [what, was, is] }))}
          />
        )}
        <OpenJobs jobs={jobs} />
        <HandedIn claims={claims} from={from} />
        {hasMore ? <p>There are more than these; the newest are shown.</p> : null}
        {notice.isSeen ? (
          <Notice kind="good" title="Marked as seen. Your lists no longer tell of it; this page stays." isLive />
        ) : (
          <form action={markSeen}>
            <input type="hidden" name="ruleId" value={notice.ruleId} />
            <Button type="submit">Mark as seen</Button>
          </form>
        )}
      </div>
    </>
  );
}
