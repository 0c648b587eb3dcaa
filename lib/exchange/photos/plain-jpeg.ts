import { InputProblem } from "#lib/errors/input-problem.ts";

/** A photo as it is kept: the picture alone. */
export interface PlainJpeg {
  content: Uint8Array;
  widthPx: number;
  heightPx: number;
}

const MARKER = 0xff;
const START_OF_IMAGE = 0xd8;
const END_OF_IMAGE = 0xd9;
const START_OF_SCAN = 0xda;
const COMMENT = 0xfe;
const FIRST_APPLICATION = 0xe0;
const LAST_APPLICATION = 0xef;
/** JFIF says how pixels lie, and Adobe's mark how colors are coded; all other application parts speak about the taking. */
const KEPT_APPLICATION: ReadonlySet<number> = new Set([0xe0, 0xee]);
/** Start-of-frame marks, which carry the size; between them lie DHT (c4), JPG (c8) and DAC (cc), which do not. */
const isFrame = (mark: number) => mark >= 0xc0 && mark <= 0xcf && mark !== 0xc4 && mark !== 0xc8 && mark !== 0xcc;

/**
 * Reads a JPEG and drops everything that a camera wrote beside the picture: place, time, device, thumbnails, comments.
 * The picture itself is not touched. Source: ITU-T T.81 annex B for the segments.
 * @throws InputProblem `input-unusable` for anything that is not a whole JPEG.
 */
export function readPlainJpeg(file: Uint8Array): PlainJpeg {
  if (file[0] !== MARKER || file[1] !== START_OF_IMAGE) throw unusable();
  const kept: Uint8Array[] = [file.subarray(0, 2)];
  let size: { widthPx: number; heightPx: number } | undefined;
  let hasScan = false;
  let at = 2;
  while (at + 2 <= file.length) {
    const mark = file[at + 1]!;
    if (file[at] !== MARKER) throw unusable();
    if (mark === END_OF_IMAGE) {
      if (!size || !hasScan) throw unusable();
      // Some cameras hang a second file, with all it knows, behind the first: it is left out.
      return { content: joined([...kept, file.subarray(at, at + 2)]), ...size };
    }
    const length = ((file[at + 2] ?? 0) << 8) | (file[at + 3] ?? 0);
    let end = at + 2 + length;
    if (length < 2 || end > file.length) throw unusable();
    if (isFrame(mark)) size = sizeOf(file, at);
    if (mark === START_OF_SCAN) {
      hasScan = true;
      end = endOfScan(file, end);
    }
    const isAbout =
      mark === COMMENT || (mark >= FIRST_APPLICATION && mark <= LAST_APPLICATION && !KEPT_APPLICATION.has(mark));
    if (!isAbout) kept.push(file.subarray(at, end));
    at = end;
  }
  throw unusable();
}

function sizeOf(file: Uint8Array, at: number): { widthPx: number; heightPx: number } {
  const heightPx = ((file[at + 5] ?? 0) << 8) | (file[at + 6] ?? 0);
  const widthPx = ((file[at + 7] ?? 0) << 8) | (file[at + 8] ?? 0);
  if (!(heightPx > 0 && widthPx > 0)) throw unusable();
  return { widthPx, heightPx };
}

/** Coded pixels go on until a mark that is neither a stuffed zero nor a restart. */
function endOfScan(file: Uint8Array, from: number): number {
  for (let at = from; at + 1 < file.length; at += 1) {
    const mark = file[at + 1]!;
    if (file[at] === MARKER && mark !== 0 && !(mark >= 0xd0 && mark <= 0xd7)) return at;
  }
  throw unusable();
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

const unusable = () =>
  new InputProblem("input-unusable", [
    {
      pointer: "#",
      code: "not-a-jpeg",
      detail: "This file is not a whole JPEG photo",
      fix: "Take the photo again, or choose another one.",
    },
  ]);
