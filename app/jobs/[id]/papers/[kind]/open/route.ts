import type { NextRequest } from "next/server";
import { languageOf } from "#app/h/proposal-by-link.ts";
import { renderDocumentPage } from "#lib/documents/html/render-document-page.ts";
import { letterheadOf } from "#lib/documents/letterhead/letterhead.ts";
import { createSpeaker } from "#lib/documents/speaker.ts";
import { contentHash } from "#lib/hash/content-hash.ts";
import { noSuchPaper, paperOfJob } from "../../paper-of-job.ts";

/** A paper on a phone: one page without script, so that it stays open where there is no signal. */
export async function GET(
  request: NextRequest,
  { params }: { params: Promise<{ id: string; kind: string }> },
): Promise<Response> {
  const { id, kind } = await params;
  const language = languageOf(request.nextUrl.searchParams.get("lang"));
  const paper = await paperOfJob(id, kind, language);
  if (!paper) return noSuchPaper();
  const speaker = createSpeaker(language);
  const other = language === "en" ? "es" : "en";
  const html = await renderDocumentPage(paper.shown, {
    fingerprint: contentHash(paper.view),
    skipLabel: speaker.say("page.skip"),
    letterhead: letterheadOf(paper.contractor, paper.view.kind),
    links: [
      { label: speaker.say("page.pdf"), href: `/jobs/${id}/papers/${kind}?lang=${language}` },
      {
        label: speaker.say("page.otherLanguage"),
        href: `/jobs/${id}/papers/${kind}/open?lang=${other}`,
        language: other,
      },
      { label: speaker.say("crew.toJob"), href: `/jobs/${id}/result` },
    ],
  });
  return new Response(html, {
    headers: { "content-type": "text/html; charset=utf-8", "cache-control": "private, no-store" },
  });
}
