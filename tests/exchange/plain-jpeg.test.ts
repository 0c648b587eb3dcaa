import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readPlainJpeg } from "#lib/exchange/photos/plain-jpeg.ts";

const segment = (mark: number, ...content: number[]) => {
  const length = content.length + 2;
  return [0xff, mark, length >> 8, length & 0xff, ...content];
};
const text = (words: string) => [...words].map((letter) => letter.charCodeAt(0));

/** The parts of a JPEG in the order of ITU-T T.81 annex B: marks, tables, a frame of 640 × 480, a scan. */
const START = [0xff, 0xd8];
const JFIF = segment(0xe0, ...text("JFIF\0"), 1, 1, 0, 0, 1, 0, 1, 0, 0);
const EXIF = segment(0xe1, ...text("Exif\0\0GPSLatitude 43.07"));
const XMP = segment(0xe1, ...text("http://ns.adobe.com/xap/1.0/\0<x:xmpmeta/>"));
const MAKER = segment(0xed, ...text("Photoshop 3.0"));
const ADOBE = segment(0xee, ...text("Adobe"), 0, 100, 0, 0, 0, 0, 1);
const COMMENT = segment(0xfe, ...text("taken by"));
const TABLE = segment(0xdb, 0, ...Array.from({ length: 64 }, () => 1));
const FRAME = segment(0xc0, 8, 480 >> 8, 480 & 0xff, 640 >> 8, 640 & 0xff, 1, 1, 0x11, 0);
const SCAN = [...segment(0xda, 1, 1, 0, 0, 63, 0), 0x12, 0xff, 0x00, 0x34];
const END = [0xff, 0xd9];
const jpeg = (...parts: number[][]) => Uint8Array.from(parts.flat());

describe("readPlainJpeg", () => {
  it("drops what a camera wrote about place, time and device, and leaves the picture as it was", () => {
    const plain = readPlainJpeg(jpeg(START, JFIF, EXIF, XMP, MAKER, ADOBE, COMMENT, TABLE, FRAME, SCAN, END));
    expect(plain).toMatchObject({ widthPx: 640, heightPx: 480 });
    expect(plain.content).toEqual(jpeg(START, JFIF, ADOBE, TABLE, FRAME, SCAN, END));
    expect(new TextDecoder("latin1").decode(plain.content)).not.toContain("GPS");
  });

  it("drops what hangs behind the end of the picture", () => {
    const plain = readPlainJpeg(jpeg(START, FRAME, SCAN, END, [...text("GPSLatitude 43.07")]));
    expect(plain.content).toEqual(jpeg(START, FRAME, SCAN, END));
  });

  it("keeps every scan of a progressive picture, even where a table holds the bytes of an end", () => {
    const trap = segment(0xc4, 0xff, 0xd9);
    const file = jpeg(START, EXIF, FRAME, SCAN, trap, SCAN, END);
    expect(readPlainJpeg(file).content).toEqual(jpeg(START, FRAME, SCAN, trap, SCAN, END));
  });

  it("changes nothing the second time", () => {
    const once = readPlainJpeg(jpeg(START, EXIF, FRAME, SCAN, END)).content;
    expect(readPlainJpeg(once).content).toEqual(once);
  });

  it.each([
    ["nothing", jpeg()],
    ["a PNG", Uint8Array.from([0x89, ...text("PNG")])],
    ["a cut file", jpeg(START, FRAME, SCAN)],
    ["a scan without a frame", jpeg(START, SCAN, END)],
    ["a part longer than the file", jpeg(START, [0xff, 0xe1, 0xff, 0xff, 1])],
    ["a part shorter than its own length", jpeg(START, [0xff, 0xe1, 0, 1, 0, 0, 0])],
  ])("refuses %s", (_what, file) => {
    expect(() => readPlainJpeg(file)).toThrow(/not a whole JPEG/);
  });

  it("answers or refuses any bytes, and what it answers holds no Exif part", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 80 }), (noise) => {
        try {
          const { content } = readPlainJpeg(Uint8Array.from([...START, ...noise]));
          expect([...content.subarray(2, 4)]).not.toEqual([0xff, 0xe1]);
        } catch (thrown) {
          expect(String(thrown)).toMatch(/not a whole JPEG/);
        }
      }),
    );
  });
});
