import { deflateSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { renderProposalPage } from "#lib/documents/html/render-proposal-page.ts";
import { issueProposal } from "#lib/documents/issued-proposal.ts";
import { contrastRatio, readableShade, readHexColor } from "#lib/documents/letterhead/contrast.ts";
import { letterheadOf } from "#lib/documents/letterhead/letterhead.ts";
import { readLogo } from "#lib/documents/letterhead/logo.ts";
import { InputProblem } from "#lib/errors/input-problem.ts";
import { estimatedExample } from "./estimated-examples.ts";

/** CRC of PNG, annex D of its specification, bit by bit: independent of the one in use. */
function crcOf(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}

function chunk(name: string, body: Uint8Array): Buffer {
  const named = Buffer.concat([Buffer.from(name, "latin1"), body]);
  const frame = Buffer.alloc(8);
  frame.writeUInt32BE(body.length, 0);
  frame.writeUInt32BE(crcOf(named), 4);
  return Buffer.concat([frame.subarray(0, 4), named, frame.subarray(4)]);
}

/** A picture of one color, put together by the PNG specification. */
function png(width: number, height: number, { interlace = 0, rows = height } = {}): Uint8Array {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2, 0, 0, interlace], 8);
  return new Uint8Array(
    Buffer.concat([
      Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
      chunk("IHDR", header),
      chunk("IDAT", deflateSync(Buffer.alloc(rows * (1 + width * 3), 0x40))),
      chunk("IEND", Buffer.alloc(0)),
    ]),
  );
}

/** Start, a frame header of T.81 (B.2.2) with height and width, end. */
const jpeg = (width: number, height: number): Uint8Array =>
  new Uint8Array([
    0xff,
    0xd8,
    0xff,
    0xe0,
    0,
    4,
    0,
    0,
    0xff,
    0xc0,
    0,
    11,
    8,
    height >> 8,
    height & 255,
    width >> 8,
    width & 255,
    1,
    1,
    0x11,
    0,
    0xff,
    0xd9,
  ]);

const refusalOf = (bytes: Uint8Array): string => {
  try {
    readLogo(bytes);
    return "taken";
  } catch (error) {
    if (error instanceof InputProblem) return error.errors[0]!.detail;
    throw error;
  }
};

describe("a logo is what its bytes say", () => {
  it("takes a PNG and a JPEG, and gives back the very bytes", () => {
    for (const [bytes, kind] of [
      [png(400, 120), "png"],
      [jpeg(400, 120), "jpeg"],
    ] as const) {
      const logo = readLogo(bytes);
      expect(logo.kind).toBe(kind);
      expect(new Uint8Array(Buffer.from(logo.base64, "base64"))).toEqual(bytes);
    }
  });

  test.each([
    ["a page named as a picture", Buffer.from("<svg onload='x()'/>"), /neither a PNG nor a JPEG/],
    ["nothing", new Uint8Array(), /neither/],
    ["a picture too wide", png(1601, 10), /1601 by 10 points/],
    ["a photo as it comes from a phone", jpeg(4032, 3024), /4032 by 3024/],
    ["an interlaced picture", png(20, 20, { interlace: 1 }), /interlaced/],
    ["pixels that end early", png(20, 20, { rows: 19 }), /damaged/],
    ["pixels that blow up when unpacked", png(20, 20, { rows: 4000 }), /damaged/],
    ["more bytes than a logo needs", Buffer.concat([png(4, 4), Buffer.alloc(130_000)]), /kB/],
    ["a JPEG that ends early", jpeg(40, 40).subarray(0, 20), /damaged/],
  ])("%s is refused", (_what, bytes, words) => {
    expect(refusalOf(new Uint8Array(bytes))).toMatch(words);
  });

  it("a PNG with any byte changed is refused", () => {
    const whole = png(30, 10);
    fc.assert(
      fc.property(fc.nat(whole.length - 1), fc.integer({ min: 1, max: 255 }), (at, change) => {
        const bytes = whole.slice();
        bytes[at] = bytes[at]! ^ change;
        expect(refusalOf(bytes)).not.toBe("taken");
      }),
    );
  });
});

describe("the color of a firm", () => {
  // WCAG 2.2: black on white is 21 to 1; #777777 on white is known as 4.48, just short of what text needs.
  it("is held to the contrast of WCAG 2.2", () => {
    expect(contrastRatio("#000000", "#ffffff")).toBeCloseTo(21, 10);
    expect(contrastRatio("#777777", "#ffffff")).toBeCloseTo(4.48, 2);
    expect(contrastRatio("#ffffff", "#777777")).toBe(contrastRatio("#777777", "#ffffff"));
  });

  it("that is too light is answered with a shade that can be read", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 0xffffff }), (value) => {
        const color = `#${value.toString(16).padStart(6, "0")}`;
        const shade = readableShade(color, ["#ffffff"]);
        expect(contrastRatio(shade, "#ffffff")).toBeGreaterThanOrEqual(4.5);
        if (contrastRatio(color, "#ffffff") >= 4.5) expect(shade).toBe(color);
      }),
    );
  });

  it("is read as people type it", () => {
    expect(["0F5566", " #0f5566", "#1af", "red", "#12345"].map(readHexColor)).toEqual([
      "#0f5566",
      "#0f5566",
      "#11aaff",
      undefined,
      undefined,
    ]);
  });
});

describe("the head of a paper", () => {
  const contractor = {
    name: "Invented Ducts & Sons",
    license: "State license 1 (invented)",
    accentColor: "#0a3d62",
    logo: readLogo(png(400, 120)),
  };

  it("says the license on crew sheet and certificate; a proposal tells it among its facts", () => {
    expect(letterheadOf(contractor, "crew-sheet")?.detail).toBe("State license 1 (invented)");
    expect(letterheadOf(contractor, "certificate")?.detail).toBe("State license 1 (invented)");
    expect(letterheadOf(contractor, "proposal")?.detail).toBeUndefined();
    expect(letterheadOf(undefined, "proposal")).toBeUndefined();
  });

  it("is frozen with the proposal, and stands on the homeowner's page with logo, name and color", async () => {
    const { job, result } = await estimatedExample("cold-attic-furnace.json");
    const issued = issueProposal({ job, result, isoDate: "2026-11-28", contractor });
    const html = await renderProposalPage({
      issued,
      language: "en",
      path: "/h/x",
      fingerprint: "0".repeat(64),
      state: "issued",
      events: [],
    });
    expect(html).toContain(
      `<img src="data:image/png;base64,${contractor.logo.base64}" alt="Invented Ducts &amp; Sons"/>`,
    );
    expect(html).toContain("@media print,(prefers-color-scheme:light){:root{--accent:#0a3d62}}");
    expect(html).toContain("State license 1 (invented)");
  });
});
