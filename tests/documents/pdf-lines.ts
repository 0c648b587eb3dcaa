import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** A line of a PDF page where it stands, in points from the upper left. */
export interface PdfLine {
  text: string;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

export interface PdfPage {
  width: number;
  height: number;
  lines: readonly PdfLine[];
}

function withFile<T>(bytes: Uint8Array, use: (file: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), "ductmend-pdf-"));
  const file = join(folder, "paper.pdf");
  writeFileSync(file, bytes);
  try {
    return use(file);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const unescaped = (text: string): string =>
  text
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&apos;", "'")
    .replaceAll("&amp;", "&");

const numberAt = (tag: string, name: string): number => Number(new RegExp(`${name}="([\\d.-]+)"`).exec(tag)![1]);

/** The lines of each page, as poppler's pdftotext finds them. */
export function pdfPages(bytes: Uint8Array): PdfPage[] {
  const xml = withFile(bytes, (file) =>
    execFileSync("pdftotext", ["-bbox-layout", file, "-"], { encoding: "utf8", maxBuffer: 1 << 28 }),
  );
  return [...xml.matchAll(/<page ([^>]*)>(.*?)<\/page>/gs)].map(([, tag, body]) => ({
    width: numberAt(tag!, "width"),
    height: numberAt(tag!, "height"),
    lines: [...body!.matchAll(/<line ([^>]*)>(.*?)<\/line>/gs)].map(([, line, words]) => ({
      text: unescaped([...words!.matchAll(/<word [^>]*>(.*?)<\/word>/gs)].map(([, word]) => word).join(" ")),
      left: numberAt(line!, "xMin"),
      right: numberAt(line!, "xMax"),
      top: numberAt(line!, "yMin"),
      bottom: numberAt(line!, "yMax"),
    })),
  }));
}

/** The text in the order in which it stands in the file, which is how it is read out. */
export const pdfTextInOrder = (bytes: Uint8Array): string =>
  withFile(bytes, (file) =>
    execFileSync("pdftotext", ["-raw", file, "-"], { encoding: "utf8", maxBuffer: 1 << 28 }),
  ).replaceAll(/\s+/g, " ");
