import type { Scope } from "#lib/store/scope.ts";

/** One act on a job, of whoever did it. */
export interface JobAct {
  at: Date;
  /** Null when nobody of the organization did it: the homeowner, the program, or the program's worker. */
  actorId: string | null;
  kind: string;
  /** Of what: a revision's number, a claim's. */
  subject: string;
  /** Words that were given with it. */
  words?: string;
}

/** A job has few of them; whoever has more reads the newest. */
const MOST_ACTS = 300;
const MOST_CLAIMS = 20;

function wordsOf(detail: unknown): string | undefined {
  const { text, reason, to, outcome } = (detail ?? {}) as Record<string, unknown>;
  const said = text ?? reason ?? to ?? outcome;
  return typeof said === "string" && said !== "" ? said : undefined;
}

/**
 * Everything that happened to a job, the newest first: entries saved, proposals issued and answered, claims handed in,
 * asked about and decided. Each comes from where nothing can be changed:
 * revisions, events, the audit log. Claims are left out for those who may not see them.
 */
export async function jobLog(
  scope: Scope,
  jobId: string,
  { now, withClaims }: { now: Date; withClaims: boolean },
): Promise<JobAct[]> {
  const saved: JobAct[] = (await scope.jobs.listRevisions(jobId)).map(({ revision, authorId, createdAt }) => ({
    at: createdAt,
    actorId: authorId,
    kind: "job.saved",
    subject: String(revision),
  }));
  const acts = [...saved];
  for (const { id, issuedAt, issuedById, jobRevision } of await scope.proposals.list({ jobId, now })) {
    acts.push({ at: issuedAt, actorId: issuedById, kind: "proposal.issued", subject: String(jobRevision) });
    for (const { kind, payload, actorId, createdAt } of await scope.proposals.events(id))
      acts.push({
        at: createdAt,
        actorId,
        kind: `proposal.${kind}`,
        subject: String(jobRevision),
        words: wordsOf(payload),
      });
  }
  const claims = withClaims ? (await scope.claims.list({ jobId, limit: MOST_CLAIMS })).items : [];
  for (const { id, reference } of claims)
    for (const { action, actorId, createdAt, detail } of await scope.audit.list({
      subjectKind: "claim",
      subjectId: id,
    }))
      acts.push({ at: createdAt, actorId, kind: action, subject: reference, words: wordsOf(detail) });
  return acts.sort((one, other) => other.at.getTime() - one.at.getTime()).slice(0, MOST_ACTS);
}
