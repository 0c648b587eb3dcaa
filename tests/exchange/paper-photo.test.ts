import sharp from "sharp";
import { describe, expect, test } from "vitest";
import { paperPhoto } from "#lib/exchange/photos/paper-photo.ts";

/** A photo of 1,600 by 1,200 pixels with fine noise, which is the hardest to make small. */
async function noisyPhoto(): Promise<Buffer> {
  const [width, height] = [1600, 1200];
  let state = 7;
  const pixels = Buffer.from(
    Array.from({ length: width * height * 3 }, () => {
      state = (Math.imul(state, 1_103_515_245) + 12_345) >>> 0;
      return 96 + (state >>> 26);
    }),
  );
  return await sharp(pixels, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: 82 })
    .toBuffer();
}

describe("a photo for a paper", () => {
  test("is a small JPEG in the same proportions, and the same bytes each time", async () => {
    const photo = await noisyPhoto();
    const href = await paperPhoto(photo);
    const bytes = Buffer.from(href.replace("data:image/jpeg;base64,", ""), "base64");
    const { format, width, height } = await sharp(bytes).metadata();
    expect({ format, width, height }).toEqual({ format: "jpeg", width: 600, height: 450 });
    expect(bytes.length).toBeLessThan(100_000);
    expect(photo.length).toBeGreaterThan(5 * bytes.length);
    expect(await paperPhoto(photo)).toBe(href);
  });

  test("that is small already is not blown up", async () => {
    const small = await sharp({ create: { width: 80, height: 60, channels: 3, background: "#888" } })
      .jpeg()
      .toBuffer();
    const bytes = Buffer.from((await paperPhoto(small)).split(",")[1]!, "base64");
    expect((await sharp(bytes).metadata()).width).toBe(80);
  });
});
