import type { ProposalEventRecord, ProposalState } from "#lib/job/proposal-state.ts";
import type { Language } from "#lib/pictures/scene.ts";
import { type OptionCard, openBlocks } from "../document-view.ts";
import type { IssuedProposal } from "../issued-proposal.ts";
import { createSpeaker, type Speaker } from "../speaker.ts";
import { DocumentHtml } from "./document-html.tsx";
import { ReadOnlyNotice, RelatedNotices, type RelatedPapers } from "./related-papers.tsx";

export type PageProblem = "option" | "name" | "agree" | "question" | "changed";

export interface ProposalPageProps {
  issued: IssuedProposal;
  language: Language;
  /** The page's own address, without a query. */
  path: string;
  fingerprint: string;
  state: ProposalState;
  events: readonly ProposalEventRecord[];
  problems?: readonly PageProblem[];
  /** What was typed into a form that had a problem. */
  typed?: Readonly<Partial<Record<"option" | "name" | "question", string>>>;
  hasJustAsked?: boolean;
  /** The other papers of the same order. */
  related?: RelatedPapers;
  /** Another paper of the order of the link's own: it can be read here and nothing else. */
  readOnlyAs?: "newer" | "earlier";
}

/** States in which a homeowner may still accept. */
export const OPEN_STATES: readonly ProposalState[] = ["issued", "sent", "seen", "question-open"];

/** The options that one can order; doing nothing needs no order. */
export function orderableOptions({ languages }: IssuedProposal, language: Language): OptionCard[] {
  return languages[language].sections
    .flatMap(({ blocks }) => openBlocks(blocks))
    .flatMap((block) => (block.kind === "options" ? block.options : []))
    .filter(({ id }) => id !== "nothing");
}

/** The homeowner's page: the paper itself, and below it the forms to ask and to accept. Plain forms, no script. */
export function ProposalPage(props: ProposalPageProps) {
  const { issued, language, path, fingerprint, state } = props;
  const speaker = createSpeaker(language);
  const other = language === "en" ? "es" : "en";
  const { readOnlyAs } = props;
  const of = readOnlyAs ? `&of=${readOnlyAs}` : "";
  const isOpen = !readOnlyAs && OPEN_STATES.includes(state) && orderableOptions(issued, language).length > 0;
  return (
    <DocumentHtml
      view={issued.languages[language]}
      frame={{
        fingerprint,
        skipLabel: speaker.say("page.skip"),
        letterhead: issued.letterhead,
        links: [
          { label: speaker.say("page.pdf"), href: `${path}/pdf?lang=${language}${of}` },
          { label: speaker.say("page.otherLanguage"), href: `${path}?lang=${other}${of}`, language: other },
          ...(isOpen ? [{ label: speaker.say("page.toAccept"), href: "#accept" }] : []),
          ...(readOnlyAs ? [] : [{ label: speaker.say("page.toAsk"), href: "#ask" }]),
        ],
        above: <StateNotices {...props} speaker={speaker} />,
        below: (
          <>
            {isOpen ? <AcceptForm {...props} speaker={speaker} /> : null}
            {readOnlyAs ? null : <AskForm {...props} speaker={speaker} />}
          </>
        ),
      }}
    />
  );
}

interface Part extends ProposalPageProps {
  speaker: Speaker;
}

function StateNotices(props: Part) {
  const { speaker, state, events, issued, language, problems = [], hasJustAsked, path, related, readOnlyAs } = props;
  const accepted = events.find(({ kind }) => kind === "accepted");
  return (
    <>
      {problems.length > 0 ? (
        <div className="notice wrong" role="alert">
          <h2>{speaker.say("page.problemTitle")}</h2>
          <ul>
            {problems.map((problem) => (
              <li key={problem}>
                <a href={problem === "question" ? "#question" : problem === "changed" ? "#document" : `#${problem}`}>
                  {speaker.say(`page.problem.${problem}`)}
                </a>
              </li>
            ))}
          </ul>
        </div>
      ) : null}
      {readOnlyAs ? <ReadOnlyNotice speaker={speaker} path={path} /> : null}
      {related ? <RelatedNotices speaker={speaker} path={path} state={state} related={related} /> : null}
      {hasJustAsked ? (
        <div className="notice done" role="status">
          <p>{speaker.say("page.asked")}</p>
        </div>
      ) : null}
      {accepted ? (
        <div className="notice done" role="status">
          <h2>{speaker.say("page.acceptedTitle")}</h2>
          <p>{sayAccepted({ speaker, accepted, options: orderableOptions(issued, language) })}</p>
        </div>
      ) : null}
      {!accepted && speaker.hasMessage(`page.closed.${state}`) ? (
        <div className="notice wrong">
          <h2>{speaker.say("page.closedTitle")}</h2>
          <p>{speaker.sayIfKnown(`page.closed.${state}`)}</p>
        </div>
      ) : null}
    </>
  );
}

/** What was accepted, by whom and when, as it was kept. */
function sayAccepted({
  speaker,
  accepted,
  options,
}: {
  speaker: Speaker;
  accepted: ProposalEventRecord;
  options: readonly OptionCard[];
}): string {
  const { optionId, name, price, fingerprint } = accepted.payload as Readonly<Record<string, string | undefined>>;
  const values = {
    option: options.find(({ id }) => id === optionId)?.title ?? optionId ?? "",
    name: name ?? "",
    date: speaker.date(accepted.createdAt.toISOString().slice(0, 10)),
  };
  return price && fingerprint
    ? speaker.say("page.acceptedAt", { ...values, price, fingerprint: fingerprint.slice(0, 12) })
    : speaker.say("page.acceptedText", values);
}

function AcceptForm({ speaker, issued, language, path, fingerprint, typed }: Part) {
  return (
    <section aria-labelledby="accept">
      <h2 id="accept">{speaker.say("page.acceptTitle")}</h2>
      <form method="post" action={path}>
        <input type="hidden" name="intent" value="accept" />
        <input type="hidden" name="lang" value={language} />
        <input type="hidden" name="fingerprint" value={fingerprint} />
        <p>{speaker.say("page.acceptText")}</p>
        <fieldset id="option">
          <legend>{speaker.say("page.acceptChoose")}</legend>
          {orderableOptions(issued, language).map(({ id, title, price }) => (
            <label key={id} className="choice">
              <input type="radio" name="option" value={id} defaultChecked={typed?.option === id} />
              <span>
                {title}, <b>{price}</b>
              </span>
            </label>
          ))}
        </fieldset>
        <label className="field">
          {speaker.say("page.acceptName")}
          <input id="name" name="name" type="text" autoComplete="name" maxLength={120} defaultValue={typed?.name} />
        </label>
        <label className="choice">
          <input id="agree" type="checkbox" name="agree" value="yes" />
          <span>{speaker.say("page.acceptAgree")}</span>
        </label>
        <p>{speaker.say("page.acceptCancel")}</p>
        <button type="submit">{speaker.say("page.acceptButton")}</button>
      </form>
    </section>
  );
}

/** Folded until there is a thread, or something to put right in what was typed. */
function AskForm({ speaker, language, path, events, typed, problems = [] }: Part) {
  const thread = events.filter(({ kind }) => kind === "asked" || kind === "answered");
  return (
    <details className="technical ask" open={thread.length > 0 || problems.includes("question")}>
      <summary>
        <h2 id="ask">{speaker.say(thread.length > 0 ? "page.threadTitle" : "page.askTitle")}</h2>
      </summary>
      <ol className="thread">
        {thread.map(({ kind, payload, createdAt }) => (
          <li key={createdAt.toISOString()}>
            <small>
              {speaker.say(kind === "asked" ? "page.you" : "page.firm", {
                date: speaker.date(createdAt.toISOString().slice(0, 10)),
              })}
            </small>
            <p>{(payload as { text?: string }).text ?? ""}</p>
          </li>
        ))}
      </ol>
      <form method="post" action={path}>
        <input type="hidden" name="intent" value="ask" />
        <input type="hidden" name="lang" value={language} />
        <p>{speaker.say("page.askText")}</p>
        <label className="field">
          {speaker.say("page.askLabel")}
          <textarea id="question" name="question" rows={3} maxLength={2000} defaultValue={typed?.question} />
        </label>
        <button type="submit">{speaker.say("page.askButton")}</button>
      </form>
    </details>
  );
}
