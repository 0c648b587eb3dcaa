import type { Metadata } from "next";
import Link from "next/link";
import { Button, LinkButton } from "#app/design/button.tsx";
import { DemoBanner } from "#app/design/demo-banner.tsx";
import { EmptyState } from "#app/design/empty-state.tsx";
import { RuleNotices } from "#app/program/rule-notices.tsx";
import { can } from "#lib/access/can.ts";
import { unseenRules } from "#lib/work/claims/rule-notices.ts";
import { duplicateJob } from "./actions.ts";
import { JobFilters } from "./job-filters.tsx";
import { isJobState, JOB_STATE_WORDS } from "./job-states.ts";
import styles from "./jobs.module.css";
import { showAs } from "./session.ts";

export const metadata: Metadata = { title: "Jobs" };

type Search = Promise<{ q?: string; state?: string; after?: string }>;

/** All jobs of the organization, newest first. */
export default async function JobsPage({ searchParams }: { searchParams: Search }) {
  const { q = "", state, after } = await searchParams;
  const filter = isJobState(state) ? state : undefined;
  const { page, name, notices } = await showAs("job.view", async (scope, actor) => ({
    page: await scope.jobs.list({
      search: q,
      limit: 50,
      ...(filter && { state: filter }),
      ...(after && { cursor: after }),
    }),
    name: actor.organizationName,
    notices: can(actor, "claim.submit") ? await unseenRules(scope) : [],
  }));
  const isFiltered = q !== "" || filter !== undefined;
  return (
    <>
      {page.items.some((job) => job.isDemo) ? <DemoBanner /> : null}
      <div className={styles.page}>
        <header className={styles.head}>
          <div>
            <p className={styles.over}>{name}</p>
            <h1>Jobs</h1>
          </div>
          <div className={styles.actions}>
            <LinkButton href="/jobs/new">New job</LinkButton>
            <LinkButton href="/quick" variant="secondary">
              Quick look
            </LinkButton>
            <LinkButton href="/jobs/import" variant="quiet">
              Open a file
            </LinkButton>
          </div>
        </header>
        <p className={styles.small}>
          Every job is tested with your <Link href="/instruments">instruments</Link>, planned with your{" "}
          <Link href="/repairs">repairs</Link> and priced with your <Link href="/prices">prices</Link>. The{" "}
          <Link href="/practice">practice house</Link> lets you try the tests first.
        </p>
        <RuleNotices notices={notices} />
        <JobFilters search={q} state={filter} />
        {page.items.length === 0 ? (
          <NothingHere isFiltered={isFiltered} />
        ) : (
          <ul className={styles.list}>
            {page.items.map((job) => (
              <li key={job.id} className={styles.job}>
                <div className={styles.jobWords}>
                  <Link href={`/jobs/${job.id}`} className={styles.jobTitle}>
                    {job.title}
                  </Link>
                  <p className={styles.small}>
                    {JOB_STATE_WORDS[job.state]} · changed {formatDay(job.updatedAt)}
                    {job.isDemo ? " · invented example" : ""}
                  </p>
                </div>
                <div className={styles.jobActions}>
                  <LinkButton href={`/jobs/${job.id}/result`} variant="quiet">
                    Result
                    <span className={styles.hidden}> of {job.title}</span>
                  </LinkButton>
                  <form action={duplicateJob}>
                    <input type="hidden" name="jobId" value={job.id} />
                    <Button type="submit" variant="quiet">
                      Copy
                      <span className={styles.hidden}> {job.title}</span>
                    </Button>
                  </form>
                </div>
              </li>
            ))}
          </ul>
        )}
        {page.nextCursor ? (
          <LinkButton variant="secondary" href={nextPage({ q, state: filter, after: page.nextCursor })}>
            Older jobs
          </LinkButton>
        ) : null}
      </div>
    </>
  );
}

function NothingHere({ isFiltered }: { isFiltered: boolean }) {
  if (isFiltered) {
    return (
      <EmptyState title="No job fits" action={<LinkButton href="/jobs">Show all jobs</LinkButton>}>
        Search for a part of the name, the street or the ZIP code.
      </EmptyState>
    );
  }
  return (
    <EmptyState title="No jobs yet" action={<LinkButton href="/jobs/new">Start the first job</LinkButton>}>
      A job is one house: its ducts, the readings of your test, the leaks you saw. The answer grows while you enter
      them.
    </EmptyState>
  );
}

const formatDay = (date: Date): string =>
  date.toLocaleDateString("en-US", { year: "numeric", month: "short", day: "numeric" });

function nextPage({ q, state, after }: { q: string; state?: string; after: string }): string {
  return `/jobs?${new URLSearchParams({ ...(q && { q }), ...(state && { state }), after })}`;
}
