import type { Metadata } from "next";
import Link from "next/link";
import { Button, LinkButton } from "#app/design/button.tsx";
import { DemoBanner } from "#app/design/demo-banner.tsx";
import { EmptyState } from "#app/design/empty-state.tsx";
import { Notice } from "#app/design/notice.tsx";
import { can } from "#lib/access/can.ts";
import { jobLog } from "#lib/work/jobs/job-log.ts";
import jobStyles from "../../jobs.module.css";
import { showAs } from "../../session.ts";
import { changedPaths } from "../../trip/changed-paths.ts";
import type { Draft } from "../../trip/draft.ts";
import { stepOfPath } from "../../trip/missing.ts";
import { STEP_WORDS, TRIP_STEPS } from "../../trip/trip-steps.ts";
import { restore } from "./actions.ts";
import { JobRecord } from "./job-record.tsx";

export const metadata: Metadata = { title: "History" };

/** Older ones stay in the database; nobody scrolls further. */
const MOST_SHOWN = 50;

interface Props {
  params: Promise<{ id: string }>;
  searchParams: Promise<{ restored?: string; meanwhile?: string }>;
}

const moment = (date: Date): string => date.toLocaleString("en-US", { dateStyle: "medium", timeStyle: "short" });

/** The steps of the trip on which two revisions differ: "House, Readings". */
function changeWords(before: Draft | undefined, after: Draft): string {
  if (!before) return "The beginning";
  const steps = new Set(changedPaths(before, after).map(stepOfPath));
  const labels = TRIP_STEPS.filter((step) => steps.has(step)).map((step) => STEP_WORDS[step].label);
  return labels.length === 0 ? "No entry changed" : `Changed: ${labels.join(", ")}`;
}

/** Every saved state of a job, who saved it and when; any of them can be made the newest one again. */
export default async function HistoryPage({ params, searchParams }: Props) {
  const { id } = await params;
  const { restored, meanwhile } = await searchParams;
  const { job, revisions, names, acts } = await showAs("job.view", async (scope, actor) => {
    const { jobs, organizations } = scope;
    const list = (await jobs.listRevisions(id)).slice(0, MOST_SHOWN + 1);
    return {
      job: await jobs.find(id),
      revisions: await Promise.all(list.map(({ revision }) => jobs.findRevision(id, revision))),
      names: new Map((await organizations.members()).map((member) => [member.id, member.name])),
      acts: await jobLog(scope, id, { now: new Date(), withClaims: can(actor, "claim.view") }),
    };
  });
  const somebody = job.isDemo ? "came with Ductmend" : "a former member";
  return (
    <>
      {job.isDemo ? <DemoBanner>{`${job.title} is made up.`}</DemoBanner> : null}
      <div className={`${jobStyles.page} ${jobStyles.narrow}`}>
        <p className={jobStyles.over}>
          <Link href={`/jobs/${id}/house`}>{job.title}</Link>
        </p>
        <h1>History</h1>
        {restored ? (
          <Notice kind="good" title={`The entries of revision ${restored} are the newest ones again.`}>
            Nothing was thrown away: what came after it is still in this list.
          </Notice>
        ) : null}
        {meanwhile ? (
          <Notice kind="problem" title="Nothing was restored, because somebody saved this job meanwhile.">
            Look at the newest revision below, then restore again.
          </Notice>
        ) : null}
        <p>
          Every time the entries are saved, a revision is kept. The job file holds all entries; it opens here again, and
          in any text editor.
        </p>
        <p>
          <LinkButton href={`/jobs/${id}/file`} variant="secondary" prefetch={false} download>
            Download the job file
          </LinkButton>
        </p>
        {revisions.length === 0 ? (
          <EmptyState title="Nothing was saved yet" action={<LinkButton href={`/jobs/${id}/house`}>Begin</LinkButton>}>
            The first step of the trip makes the first revision.
          </EmptyState>
        ) : null}
        <ol className={jobStyles.list} aria-label="Revisions, newest first">
          {revisions.slice(0, MOST_SHOWN).map(({ revision, document, createdAt, authorId }, index) => (
            <li key={revision} className={jobStyles.job}>
              <div className={jobStyles.jobWords}>
                <h2 className={jobStyles.jobTitle}>
                  Revision {revision}
                  {index === 0 ? ", the newest" : ""}
                </h2>
                <p className={jobStyles.small}>
                  {moment(createdAt)}, {names.get(authorId) ?? somebody}
                </p>
                <p className={jobStyles.small}>
                  {changeWords(revisions[index + 1]?.document as Draft | undefined, document as Draft)}
                </p>
              </div>
              <div className={jobStyles.jobActions}>
                <LinkButton href={`/jobs/${id}/file?revision=${revision}`} variant="quiet" prefetch={false} download>
                  File<span className={jobStyles.hidden}> of revision {revision}</span>
                </LinkButton>
                {index > 0 ? (
                  <form action={restore}>
                    <input type="hidden" name="jobId" value={id} />
                    <input type="hidden" name="onRevision" value={job.currentRevision} />
                    <input type="hidden" name="revision" value={revision} />
                    <Button type="submit" variant="quiet">
                      Restore<span className={jobStyles.hidden}> revision {revision}</span>
                    </Button>
                  </form>
                ) : null}
              </div>
            </li>
          ))}
        </ol>
        <JobRecord acts={acts} names={names} somebody={somebody} />
      </div>
    </>
  );
}
