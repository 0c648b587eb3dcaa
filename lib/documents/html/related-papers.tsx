import type { ProposalState } from "#lib/job/proposal-state.ts";
import type { Speaker } from "../speaker.ts";

/** The other papers of the same order, as far as a page names them. */
export interface RelatedPapers {
  /** The newest paper after this one: it changes an accepted paper, or takes the place of one that was not. */
  newer?: { issuedOn: string; fingerprint: string; isAccepted: boolean };
  /** The accepted paper that this one changes. */
  earlier?: { acceptedOn: string; fingerprint: string };
}

/** Names and links the newer paper and the accepted one that this paper changes. */
export function RelatedNotices({
  speaker,
  path,
  state,
  related: { newer, earlier },
}: {
  speaker: Speaker;
  path: string;
  state: ProposalState;
  related: RelatedPapers;
}) {
  const link = (which: "newer" | "earlier", words: string) => (
    <a href={`${path}?of=${which}&lang=${speaker.language}`}>{words}</a>
  );
  const kind = state !== "accepted" ? "replaced" : newer?.isAccepted ? "changed" : "changeOrder";
  return (
    <>
      {newer ? (
        <div className="notice wrong">
          <h2>{speaker.say("page.newerTitle")}</h2>
          <p>
            {speaker.say(`page.newer.${kind}`, {
              date: speaker.date(newer.issuedOn),
              fingerprint: newer.fingerprint.slice(0, 12),
            })}{" "}
            {link("newer", speaker.say("page.newerLink"))}
          </p>
        </div>
      ) : null}
      {earlier ? (
        <div className="notice note">
          <p>
            {speaker.say("page.earlier", {
              date: speaker.date(earlier.acceptedOn),
              fingerprint: earlier.fingerprint.slice(0, 12),
            })}{" "}
            {link("earlier", speaker.say("page.earlierLink"))}
          </p>
        </div>
      ) : null}
    </>
  );
}

/** Above another paper of the same order: it is for reading only, and the way back. */
export function ReadOnlyNotice({ speaker, path }: { speaker: Speaker; path: string }) {
  return (
    <div className="notice note">
      <p>
        {speaker.say("page.readOnly")}{" "}
        <a href={`${path}?lang=${speaker.language}`}>{speaker.say("page.readOnlyBack")}</a>
      </p>
    </div>
  );
}
