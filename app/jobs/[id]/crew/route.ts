import type { NextRequest } from "next/server";
import { languageOf } from "#app/h/proposal-by-link.ts";
import { contractorOf } from "#app/organization/contractor-of.ts";
import { crewSheetView } from "#lib/documents/crew-sheet-view.ts";
import { renderDocumentPage } from "#lib/documents/html/render-document-page.ts";
import { letterheadOf } from "#lib/documents/letterhead/letterhead.ts";
import { createSpeaker } from "#lib/documents/speaker.ts";
import { contentHash } from "#lib/hash/content-hash.ts";
import { computeResult } from "../../compute-result.ts";
import { showAs } from "../../session.ts";
import { showJob } from "../../show-job.ts";

/** The crew's sheet on a phone: one page without script, so that it stays open where there is no signal. */
export async function GET(request: NextRequest, { params }: { params: Promise<{ id: string }> }): Promise<Response> {
  const { id } = await params;
  const language = languageOf(request.nextUrl.searchParams.get("lang"));
  const { job } = await showJob(id);
  const [result, organization] = await Promise.all([
    computeResult(job),
    showAs("job.view", ({ organizations }) => organizations.own()),
  ]);
  const contractor = contractorOf(organization);
  const view = crewSheetView({
    job,
    result,
    language,
    contractor,
    isoDate: new Date().toLocaleDateString("en-CA"),
  });
  const speaker = createSpeaker(language);
  const other = language === "en" ? "es" : "en";
  const html = await renderDocumentPage(view, {
    fingerprint: contentHash(view),
    skipLabel: speaker.say("page.skip"),
    letterhead: letterheadOf(contractor, view.kind),
    links: [
      ...(result.scope.chosen === null
        ? []
        : [{ label: speaker.say("page.pdf"), href: `/jobs/${id}/papers/crew-sheet?lang=${language}` }]),
      { label: speaker.say("page.otherLanguage"), href: `/jobs/${id}/crew?lang=${other}`, language: other },
      { label: speaker.say("crew.toJob"), href: `/jobs/${id}/result` },
    ],
  });
  return new Response(html, {
    headers: { "content-type": "text/html; charset=utf-8", "cache-control": "private, no-store" },
  });
}
