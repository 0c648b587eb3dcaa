import type { Metadata } from "next";
import { cookies, headers } from "next/headers";
import Link from "next/link";
import { notFound } from "next/navigation";
import QRCode from "qrcode";
import { Button, LinkButton } from "#app/design/button.tsx";
import { DemoBanner } from "#app/design/demo-banner.tsx";
import { EmptyState } from "#app/design/empty-state.tsx";
import { Notice } from "#app/design/notice.tsx";
import { TextArea } from "#app/design/text-field.tsx";
import { contractorOf } from "#app/organization/contractor-of.ts";
import type { ProposalEventKind, ProposalEventRecord, ProposalState } from "#lib/job/proposal-state.ts";
import type { ProposalSummary } from "#lib/store/repositories/proposals.ts";
import { areSameMeasures, type Measures, orderedWork } from "../../ordered-work.ts";
import { showAs } from "../../session.ts";
import { pickScope } from "../options/actions.ts";
import styles from "../result/result.module.css";
import { answer, issue, markSent } from "./actions.ts";
import { linkCookie } from "./link-cookie.ts";
import { OpenPromises } from "./open-promises.tsx";

export const metadata: Metadata = { title: "Proposal" };

const STATES: Readonly<Record<ProposalState, string>> = {
  issued: "Issued, not sent yet",
  sent: "Sent, not opened yet",
  seen: "Opened by the homeowner",
  "question-open": "A question waits for your answer",
  accepted: "Accepted",
  declined: "Declined",
  expired: "Expired",
  withdrawn: "Withdrawn",
  superseded: "Replaced by a newer one",
};

const day = (date: Date): string => date.toLocaleDateString("en-US", { dateStyle: "medium" });

async function FreshLink({ token, jobId, proposalId }: { token: string; jobId: string; proposalId: string }) {
  const host = (await headers()).get("host") ?? "127.0.0.1:3000";
  const link = `http://${host}/h/${token}`;
  const picture = await QRCode.toDataURL(link, { margin: 1, width: 384 });
  const mail = `mailto:?subject=${encodeURIComponent("Your duct sealing proposal")}&body=${encodeURIComponent(`Here is what we found and what we propose: ${link}`)}`;
  return (
    <Notice kind="good" title="The proposal is ready. Its link is shown here for an hour and is not kept in clear.">
      <a className={styles.link} href={link}>
        {link}
      </a>
      {/* biome-ignore lint/performance/noImgElement: a picture made on the spot has nothing to optimize */}
      <img className={styles.code} src={picture} width={192} height={192} alt="The same link as a code to scan" />
      <form action={markSent} className={styles.actions}>
        <input type="hidden" name="jobId" value={jobId} />
        <input type="hidden" name="proposalId" value={proposalId} />
        <LinkButton href={mail} variant="secondary">
          Write a mail
        </LinkButton>
        <LinkButton href={`/h/${token}/pdf`} variant="secondary">
          Open the PDF
        </LinkButton>
        <Button type="submit">I have sent it</Button>
      </form>
    </Notice>
  );
}

function issueWords(newest: ProposalState | undefined): string {
  if (newest === undefined) return "Issue the proposal";
  return newest === "accepted" ? "Issue a change order" : "Issue it anew from the entries as they are now";
}

const isChangeOrder = (
  { supersedesId }: ProposalSummary,
  issued: readonly Pick<ProposalSummary, "id" | "state">[],
): boolean => issued.some(({ id, state }) => id === supersedesId && state === "accepted");

const HAPPENINGS: Readonly<Partial<Record<ProposalEventKind, string>>> = {
  sent: "Sent",
  seen: "opened",
  asked: "asked",
  answered: "answered",
  accepted: "accepted",
};

/** What happened so far, each with its day and hour. */
function happenings(events: readonly ProposalEventRecord[]): string {
  return events
    .flatMap(({ kind, createdAt }) => {
      const words = HAPPENINGS[kind];
      const when = createdAt.toLocaleString("en-US", { dateStyle: "medium", timeStyle: "short" });
      return words ? [`${words} ${when}`] : [];
    })
    .join(" · ");
}

/** Issue a proposal, send its link, see where it stands, answer what is asked. */
export default async function ProposalPage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params;
  const { record, planned, ordered, issued, threads, contractor } = await showAs("job.view", async (scope) => {
    const { jobs, proposals, organizations } = scope;
    const { job, revision } = await jobs.findCurrent(id);
    const list = await proposals.list({ jobId: id, now: new Date() });
    return {
      planned: (revision?.document as { plan?: { chosenMeasures?: Measures } } | undefined)?.plan?.chosenMeasures,
      ordered: await orderedWork(scope, id),
      record: job,
      contractor: contractorOf(await organizations.own()),
      issued: list,
      threads: await Promise.all(list.map((each) => proposals.events(each.id))),
    };
  });
  if (!record) notFound();
  const token = (await cookies()).get(linkCookie(id))?.value;
  const newest = issued[0];
  return (
    <>
      {record.isDemo ? <DemoBanner>{`${record.title} is made up.`}</DemoBanner> : null}
      <div className={styles.page}>
        <p className={styles.over}>
          <Link href={`/jobs/${id}/result`}>{record.title}, result</Link>
        </p>
        <h1>Proposal</h1>
        {token && newest ? <FreshLink token={token} jobId={id} proposalId={newest.id} /> : null}
        {ordered && !areSameMeasures(planned ?? [], ordered.measures) ? (
          <Notice kind="doubt" title={`The homeowner ordered “${ordered.optionTitle}”. The job does not hold it yet.`}>
            The crew’s sheet follows the order. Take it into the job, so that result and retest follow it too.
            <form action={pickScope} className={styles.actions}>
              <input type="hidden" name="jobId" value={id} />
              <input type="hidden" name="measures" value={JSON.stringify(ordered.measures)} />
              <Button type="submit">Plan what was ordered</Button>
            </form>
          </Notice>
        ) : null}
        <OpenPromises contractor={contractor} />
        <form action={issue} className={styles.actions}>
          <input type="hidden" name="jobId" value={id} />
          <Button type="submit" variant={newest ? "secondary" : "primary"}>
            {issueWords(newest?.state)}
          </Button>
          <LinkButton href={`/jobs/${id}/options`} variant="quiet">
            Choose the work
          </LinkButton>
          <LinkButton href={`/jobs/${id}/papers/crew-sheet/open`} variant="quiet" prefetch={false}>
            Crew sheet on the phone
          </LinkButton>
          <LinkButton href="/organization" variant="quiet">
            What your papers promise
          </LinkButton>
        </form>
        {issued.length === 0 ? (
          <EmptyState title="Nothing has been issued yet">
            Issuing freezes the numbers, the words and the prices as they are now. The homeowner opens it by a link,
            without an account.
          </EmptyState>
        ) : null}
        {issued.map((proposal, index) => {
          const thread = threads[index]!.filter(
            ({ kind }) => kind === "asked" || kind === "answered" || kind === "accepted",
          );
          return (
            <section key={proposal.id} aria-labelledby={proposal.id}>
              <h2 id={proposal.id}>{STATES[proposal.state]}</h2>
              <p className={styles.over}>
                Issued on {day(proposal.issuedAt)}, open until {day(proposal.expiresAt)}. Fingerprint{" "}
                <code>{proposal.contentHash.slice(0, 16)}</code>
              </p>
              {isChangeOrder(proposal, issued) ? (
                <p>A change order to the accepted paper below. That order stands until this one is accepted.</p>
              ) : null}
              <p className={styles.over}>{happenings(threads[index]!)}</p>
              <ul className={styles.thread}>
                {thread.map((event) => {
                  const { text, name, optionId } = event.payload as { text?: string; name?: string; optionId?: string };
                  const who = event.kind === "answered" ? "You" : (name ?? "The homeowner");
                  return (
                    <li key={`${event.kind} ${event.createdAt.getTime()}`}>
                      <strong>{who}:</strong>{" "}
                      {event.kind === "accepted" ? `accepted ${optionId ?? "the proposal"}` : text}
                    </li>
                  );
                })}
              </ul>
              {proposal.state === "question-open" ? (
                <form action={answer}>
                  <input type="hidden" name="jobId" value={id} />
                  <input type="hidden" name="proposalId" value={proposal.id} />
                  <TextArea label="Your answer" name="text" rows={3} />
                  <Button type="submit">Send the answer</Button>
                </form>
              ) : null}
            </section>
          );
        })}
      </div>
    </>
  );
}
