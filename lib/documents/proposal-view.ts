import type { DocumentView } from "./document-view.ts";
import { frameWords } from "./frame-words.ts";
import { housePicture } from "./house-picture.ts";
import { safetySection, uncertainSection } from "./proposal/doubts.ts";
import { assumedSection, sourcesSection, wordsSection, workingsSection } from "./proposal/evidence.ts";
import { foundSection, meansSection } from "./proposal/findings.ts";
import { optionsSection, proposeSection } from "./proposal/plan.ts";
import { proofSection } from "./proposal/proof.ts";
import { createJobContext, type JobContext, type ProposalInput } from "./proposal/proposal-context.ts";
import { nothingSection, savingsSection } from "./proposal/savings.ts";
import { verdictHead } from "./proposal/verdict.ts";
import { visitSection, yourselfSection } from "./proposal/visit.ts";

/**
 * The proposal as data, in the order in which a homeowner asks: found, means, proposed, price, saving, doing nothing,
 * the day, alone, uncertain, safety, proof; then what was assumed, how it was worked out, from which sources.
 */
export function proposalView(input: ProposalInput): DocumentView {
  const context = createJobContext(input);
  const { speaker, job } = context;
  const { house } = job;
  const visit = visitSection(context);
  return {
    kind: "proposal",
    language: input.language,
    locale: speaker.locale,
    title: speaker.say(input.changes ? "proposal.changeTitle" : "proposal.title", { house: house.label }),
    facts: documentFacts(context),
    ...verdictHead(context),
    opening: { of: "house", input: housePicture(context) },
    sections: [
      foundSection(context),
      meansSection(context),
      proposeSection(context),
      optionsSection(context),
      savingsSection(context),
      nothingSection(context),
      ...(visit ? [visit] : []),
      yourselfSection(context),
      uncertainSection(context),
      safetySection(context),
      proofSection(context),
      wordsSection(context),
      assumedSection(context),
      workingsSection(context),
      sourcesSection(context),
    ],
    footer: speaker.say("proposal.footer", { house: house.label, date: speaker.date(input.isoDate) }),
    isoDate: input.isoDate,
    author: input.contractor?.name ?? "",
    words: frameWords(speaker),
  };
}

/** For which house, measured and written when, by whom and how to reach them, until when it holds. */
export function documentFacts({
  speaker,
  job,
  contractor,
  isoDate,
  expiresOn,
  replaces,
  changes,
}: JobContext): string[] {
  const date = speaker.date(isoDate);
  const reach = [contractor?.address, contractor?.phone, contractor?.email, contractor?.license].filter(
    (part) => part !== undefined,
  );
  return [
    speaker.say("proposal.forHouse", { house: job.house.label }),
    ...(job.date ? [speaker.say("proposal.measured", { date: speaker.date(job.date) })] : []),
    contractor
      ? speaker.say("proposal.by", { contractor: contractor.name, date })
      : speaker.say("proposal.dated", { date }),
    ...(reach.length > 0 ? [reach.join(" · ")] : []),
    ...(expiresOn ? [speaker.say("proposal.expires", { date: speaker.date(expiresOn) })] : []),
    ...(changes
      ? [
          speaker.say("proposal.changes", {
            fingerprint: changes.fingerprint.slice(0, 12),
            date: speaker.date(changes.acceptedOn),
          }),
        ]
      : []),
    ...(replaces ? [speaker.say("proposal.replaces", { fingerprint: replaces.slice(0, 12) })] : []),
  ];
}
