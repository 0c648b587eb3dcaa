import { Document, Page, renderToBuffer, Text } from "@react-pdf/renderer";
import { createElement } from "react";
import type { Job } from "#lib/job/job-schema.ts";
import type { Result } from "#lib/job/result/result-schema.ts";
import { formatUsdCents } from "#lib/units/format.ts";
import { DOCUMENT_FONTS, registerDocumentFonts } from "./document-fonts.ts";

/** The proposal as a PDF file. */
export async function renderProposalPdf({ job, result }: { job: Job; result: Result }): Promise<Uint8Array> {
  registerDocumentFonts();
  const say = (text: string) => createElement(Text, { key: text, style: { marginBottom: 8 } }, text);
  return await renderToBuffer(
    createElement(
      Document,
      { title: job.title, language: "en-US" },
      createElement(
        Page,
        { size: "LETTER", style: { padding: 54, fontFamily: DOCUMENT_FONTS.sans, fontSize: 12 } },
        say(job.house.label),
        say(result.scope.verdict.reason),
        ...result.scope.options.map((option) => say(`${option.title}: ${formatUsdCents(option.priceUsdCents)}`)),
      ),
    ),
  );
}
