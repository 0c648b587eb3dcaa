import { join } from "node:path";
import { Font } from "@react-pdf/renderer";
import { fontFolder } from "./font-folder.ts";

/** Families of the printed documents, as the styles name them. */
export const DOCUMENT_FONTS = { sans: "Atkinson", mono: "Atkinson Mono", serif: "Source Serif" } as const;

const FACES = [
  { family: DOCUMENT_FONTS.sans, packageName: "atkinson-hyperlegible-next" },
  { family: DOCUMENT_FONTS.mono, packageName: "atkinson-hyperlegible-mono" },
  { family: DOCUMENT_FONTS.serif, packageName: "source-serif-4" },
] as const;
const WEIGHTS = [400, 600] as const;

let isRegistered = false;

/** Tells the PDF library where the letters are; once for the process. */
export function registerDocumentFonts(): void {
  if (isRegistered) return;
  const folder = fontFolder();
  for (const { family, packageName } of FACES) {
    Font.register({
      family,
      fonts: WEIGHTS.map((fontWeight) => ({
        src: join(folder, packageName, "files", `${packageName}-latin-${fontWeight}-normal.woff`),
        fontWeight,
      })),
    });
  }
  // A broken word is hard to read, and its parts are lost to a search: words stay whole.
  Font.registerHyphenationCallback((word) => [word]);
  isRegistered = true;
}
