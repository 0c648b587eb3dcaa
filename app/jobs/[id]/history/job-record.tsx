import { DataTable } from "#app/design/data-table.tsx";
import { CLAIM_ACTS, CLAIM_STATE_WORDS, isClaimState, isOutcome, OUTCOME_WORDS } from "#app/program/claim-words.ts";
import type { JobAct } from "#lib/work/jobs/job-log.ts";

const ACTS: Readonly<Record<string, string>> = {
  "job.saved": "Entries saved",
  "proposal.issued": "Proposal issued",
  "proposal.sent": "Proposal sent",
  "proposal.seen": "Proposal opened",
  "proposal.asked": "Question about the proposal",
  "proposal.answered": "Question answered",
  "proposal.accepted": "Proposal accepted",
  "proposal.declined": "Proposal declined",
  "proposal.expired": "Proposal expired",
  "proposal.withdrawn": "Proposal withdrawn",
};

const moment = (date: Date): string => date.toLocaleString("en-US", { dateStyle: "medium", timeStyle: "short" });

const ofWhat = ({ kind, subject }: JobAct): string =>
  kind.startsWith("claim.") ? `claim ${subject}` : `revision ${subject}`;

function said({ words }: JobAct): string {
  if (words === undefined) return "";
  if (isClaimState(words)) return CLAIM_STATE_WORDS[words];
  return isOutcome(words) ? OUTCOME_WORDS[words] : words;
}

/** Who acts where nobody of the organization did. */
function whoElse(kind: string): string {
  if (kind.startsWith("proposal.")) return "The homeowner";
  return kind === "claim.checked" ? "Ductmend" : "The program";
}

/** Everything that was done with a job, by whom and when. It is only ever added to. */
export function JobRecord({
  acts,
  names,
  somebody,
}: {
  acts: readonly JobAct[];
  names: ReadonlyMap<string, string>;
  /** Who acts that no member's name is known of. */
  somebody: string;
}) {
  return (
    <section aria-labelledby="record">
      <h2 id="record">The record</h2>
      <p>Everything that was done with this job. Nobody can change it or take something out.</p>
      <DataTable
        caption="Every act, the newest first"
        isCardsWhenNarrow
        columns={[{ label: "When" }, { label: "Who" }, { label: "What" }, { label: "Said" }]}
        rows={acts.map((act, index) => ({
          id: `${index} ${act.kind}`,
          cells: [
            moment(act.at),
            act.actorId === null
              ? whoElse(act.kind)
              : (names.get(act.actorId) ?? (act.kind.startsWith("claim.") ? "The program" : somebody)),
            `${ACTS[act.kind] ?? CLAIM_ACTS[act.kind] ?? act.kind}, ${ofWhat(act)}`,
            said(act),
          ],
        }))}
      />
    </section>
  );
}
