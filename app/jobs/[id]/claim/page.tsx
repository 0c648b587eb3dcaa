import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { Button, LinkButton } from "#app/design/button.tsx";
import { DemoBanner } from "#app/design/demo-banner.tsx";
import { EmptyState } from "#app/design/empty-state.tsx";
import { Notice } from "#app/design/notice.tsx";
import { PlainSelect } from "#app/design/plain-select.tsx";
import { showAs } from "#app/jobs/session.ts";
import { CLAIM_STATE_WORDS, day } from "#app/program/claim-words.ts";
import styles from "#app/program/program.module.css";
import { FLAGS } from "#lib/claims/flags/claim-flag.ts";
import { evidenceFlags } from "#lib/claims/flags/evidence-flags.ts";
import { timeFlags } from "#lib/claims/flags/time-flags.ts";
import type { Job } from "#lib/job/job-schema.ts";
import { parseJob } from "#lib/job/parse-job.ts";
import { claimReference } from "#lib/work/claims/submit-claim.ts";
import { handIn } from "./actions.ts";

export const metadata: Metadata = { title: "Claim" };

const PROBLEMS: Readonly<Record<string, string>> = {
  again: "This state of the job was handed in before. Change the entries first: each state makes one claim.",
  unfit: "The claim could not be made from these entries. Look at the result page for what is missing.",
};

function readJob(document: unknown): Job | null {
  try {
    return parseJob(document);
  } catch {
    return null;
  }
}

const hasRetest = ({ tests }: Job) => tests.some(({ stage }) => stage === "retest" || stage === "final");

/** What the program will ask about anyway, said before the claim goes out. */
function BeforeHandingIn({ job }: { job: Job }) {
  const today = new Date().toISOString().slice(0, 10);
  const flags = [...evidenceFlags({ job }), ...timeFlags({ job, claimedOn: today })];
  if (flags.length === 0) return <Notice kind="good" title="Nothing is missing that programs usually ask for." />;
  return (
    <div className={styles.stack}>
      {flags.map(({ code, evidence }) => (
        <Notice key={code} kind="doubt" word="Before you hand it in" title={FLAGS[code].title}>
          <ul className={styles.evidence}>
            {evidence.map(({ path, says }) => (
              <li key={`${path} ${says}`}>{says}</li>
            ))}
          </ul>
          You can hand it in all the same; the program will see the same list.
        </Notice>
      ))}
    </div>
  );
}

/** From the result of a job with a retest to a claim that anyone can recompute. */
export default async function JobClaimPage({
  params,
  searchParams,
}: {
  params: Promise<{ id: string }>;
  searchParams: Promise<{ problem?: string }>;
}) {
  const [{ id }, { problem }] = [await params, await searchParams];
  const { record, revision, programs, claims } = await showAs("claim.submit", async (scope) => {
    const current = await scope.jobs.findCurrent(id);
    return {
      record: current.job,
      revision: current.revision,
      programs: await scope.programs.list(),
      claims: (await scope.claims.list({ jobId: id, limit: 20 })).items,
    };
  });
  if (!revision) notFound();
  const job = readJob(revision.document);
  const reference = job ? claimReference(job.id, revision.revision) : "";
  const handedIn = claims.filter((claim) => claim.reference === reference);
  const open = programs.filter(({ id: programId }) => !handedIn.some((claim) => claim.programId === programId));
  return (
    <>
      {record.isDemo ? <DemoBanner>{`${record.title} is made up.`}</DemoBanner> : null}
      <div className={styles.page}>
        <p className={styles.over}>
          <Link href={`/jobs/${id}/result`}>{record.title}, result</Link>
        </p>
        <h1>Claim</h1>
        <p>
          The packet carries the readings as taken, the instruments, what was assumed, the numbers and their
          fingerprint. Anyone can recompute it, and nobody can change it once it is handed in.
        </p>
        {problem && PROBLEMS[problem] ? <Notice kind="problem" title={PROBLEMS[problem]} isLive /> : null}
        {claims.length > 0 ? (
          <ul className={styles.people}>
            {claims.map((claim) => (
              <li key={claim.id} className={styles.person}>
                <p>
                  <Link href={`/program/claims/${claim.id}`}>Claim {claim.reference}</Link>, handed in on{" "}
                  {day(claim.submittedAt)}
                </p>
                <span className={styles.state}>{CLAIM_STATE_WORDS[claim.state]}</span>
              </li>
            ))}
          </ul>
        ) : null}
        {job && hasRetest(job) ? (
          <>
            {handedIn.map((claim) => (
              <Notice
                key={claim.id}
                kind="info"
                title={`These entries are handed in; the claim’s state: ${CLAIM_STATE_WORDS[claim.state].toLowerCase()}.`}
              >
                Each state of a job makes one claim. Change the entries, and a new one can be handed in.
              </Notice>
            ))}
            {open.length > 0 ? <BeforeHandingIn job={job} /> : null}
            {open.length > 0 ? (
              <form action={handIn}>
                <input type="hidden" name="jobId" value={id} />
                <PlainSelect
                  label="Program"
                  name="programId"
                  options={open.map((program) => ({ value: program.id, label: program.name }))}
                />
                <Button type="submit" variant={claims.length > 0 ? "secondary" : "primary"}>
                  Hand in the claim
                </Button>
              </form>
            ) : programs.length === 0 ? (
              <p>No program has invited you yet.</p>
            ) : null}
          </>
        ) : (
          <EmptyState
            title="There is no retest yet"
            action={<LinkButton href={`/jobs/${id}/readings`}>Enter the retest</LinkButton>}
          >
            A claim shows what a test after the work has verified. Add that test with its stage “after the work”.
          </EmptyState>
        )}
      </div>
    </>
  );
}
