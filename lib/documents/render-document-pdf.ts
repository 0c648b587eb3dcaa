import { renderToBuffer } from "@react-pdf/renderer";
import { registerDocumentFonts } from "./document-fonts.ts";
import type { DocumentView } from "./document-view.ts";
import { DocumentPdf, type PdfFrame } from "./pdf/document-pdf.tsx";

/** Any document as a PDF file: the same view and frame give the same bytes. */
export async function renderDocumentPdf(view: DocumentView, frame: PdfFrame): Promise<Uint8Array> {
  registerDocumentFonts();
  return await renderToBuffer(DocumentPdf({ view, frame }));
}
