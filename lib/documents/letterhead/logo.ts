import { crc32, inflateSync } from "node:zlib";
import { z } from "zod";
import { refuse } from "#lib/errors/input-problem.ts";

/** More would make every issued paper heavy; the form makes a picture smaller before it is sent. */
export const MOST_LOGO_BYTES = 120_000;
export const MOST_LOGO_WIDTH = 1600;
export const MOST_LOGO_HEIGHT = 800;

export const logoSchema = z
  .strictObject({ kind: z.enum(["png", "jpeg"]), base64: z.base64().max(Math.ceil(MOST_LOGO_BYTES / 3) * 4) })
  .meta({ id: "Logo", title: "Logo" });
export type Logo = z.output<typeof logoSchema>;

/** The picture as an address that holds it. */
export const logoHref = ({ kind, base64 }: Logo): string => `data:image/${kind};base64,${base64}`;

const PNG_SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const JPEG_SIGNATURE = [0xff, 0xd8, 0xff];
const FIX_ANEW = "Save the picture anew as PNG or JPEG, at most 1,600 by 800 points.";

/**
 * A logo from the bytes of a file. What it is, the bytes say, not its name. Valid: a PNG that is not interlaced or a
 * JPEG, up to 1600 × 800 points and 120 kB. Source: PNG (W3C, third edition), JPEG (ITU-T T.81).
 * @throws InputProblem that says what is wrong with the file.
 */
export function readLogo(bytes: Uint8Array): Logo {
  if (bytes.length > MOST_LOGO_BYTES)
    refuseLogo(
      `The file has ${Math.ceil(bytes.length / 1000)} kB, more than ${MOST_LOGO_BYTES / 1000}`,
      "Make the picture smaller, about 600 points wide, and choose it again.",
    );
  const base64 = Buffer.from(bytes).toString("base64");
  if (startsWith(bytes, PNG_SIGNATURE)) {
    checkSize(sizeOfPng(bytes));
    return { kind: "png", base64 };
  }
  if (startsWith(bytes, JPEG_SIGNATURE)) {
    checkSize(sizeOfJpeg(bytes));
    return { kind: "jpeg", base64 };
  }
  return refuseLogo("The file is neither a PNG nor a JPEG picture", FIX_ANEW);
}

function refuseLogo(detail: string, fix: string): never {
  return refuse({ field: "logo", detail, fix });
}

const startsWith = (bytes: Uint8Array, signature: readonly number[]): boolean =>
  signature.every((byte, at) => bytes[at] === byte);

interface Size {
  width: number;
  height: number;
}

function checkSize({ width, height }: Size): void {
  if (width >= 1 && height >= 1 && width <= MOST_LOGO_WIDTH && height <= MOST_LOGO_HEIGHT) return;
  refuseLogo(
    `The picture has ${width} by ${height} points; at most ${MOST_LOGO_WIDTH} by ${MOST_LOGO_HEIGHT} are taken`,
    FIX_ANEW,
  );
}

const CHANNELS: Readonly<Record<number, number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };

/** Walks every chunk with its checksum, and unpacks the pixels: a picture that is damaged is found here, not on a paper. */
function sizeOfPng(bytes: Uint8Array): Size {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const damaged = (): never => refuseLogo("The PNG picture is damaged", FIX_ANEW);
  const packed: Uint8Array[] = [];
  let header: (Size & { rowBytes: number }) | undefined;
  let at = PNG_SIGNATURE.length;
  let name = "";
  while (name !== "IEND") {
    if (at + 12 > bytes.length) damaged();
    const length = view.getUint32(at);
    if (at + 12 + length > bytes.length) damaged();
    name = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    const body = bytes.subarray(at + 8, at + 8 + length);
    if (crc32(bytes.subarray(at + 4, at + 8 + length)) !== view.getUint32(at + 8 + length)) damaged();
    if (name === "IHDR") header = headerOf(body) ?? damaged();
    if (name === "IDAT") packed.push(body);
    at += 12 + length;
  }
  if (header === undefined) return damaged();
  checkSize(header);
  const expected = (header.rowBytes + 1) * header.height;
  try {
    if (inflateSync(Buffer.concat(packed), { maxOutputLength: expected }).length !== expected) damaged();
  } catch {
    damaged();
  }
  return header;
}

function headerOf(body: Uint8Array): (Size & { rowBytes: number }) | undefined {
  if (body.length !== 13) return undefined;
  const view = new DataView(body.buffer, body.byteOffset, body.byteLength);
  const [width, height] = [view.getUint32(0), view.getUint32(4)];
  const [bits = 0, color = 0, , , interlace] = body.subarray(8);
  const channels = CHANNELS[color];
  if (channels === undefined) return undefined;
  if (interlace !== 0) refuseLogo("The PNG picture is interlaced, which papers cannot show", FIX_ANEW);
  return { width, height, rowBytes: Math.ceil((width * channels * bits) / 8) };
}

/** The frame header is one of these markers (T.81, table B.1); 0xC4, 0xC8 and 0xCC are others. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

function sizeOfJpeg(bytes: Uint8Array): Size {
  const damaged = (): never => refuseLogo("The JPEG picture is damaged", FIX_ANEW);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (!(bytes.at(-2) === 0xff && bytes.at(-1) === 0xd9)) damaged();
  let at = 2;
  while (at + 9 < bytes.length) {
    const marker = bytes[at + 1]!;
    if (bytes[at] !== 0xff) damaged();
    if (isFrame(marker)) return { height: view.getUint16(at + 5), width: view.getUint16(at + 7) };
    at += 2 + view.getUint16(at + 2);
  }
  return damaged();
}
