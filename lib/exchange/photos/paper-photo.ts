import sharp from "sharp";

/** Sharp at a third of a sheet's width, and a dozen of them well under a megabyte. */
const LONGEST_SIDE_PX = 600;
const QUALITY = 72;

/**
 * A photo made small for a paper, as a data address: a page or PDF with it needs nothing else to be shown. The same
 * photo gives the same bytes by the same version of the library.
 */
export async function paperPhoto(jpeg: Uint8Array): Promise<string> {
  const small = await sharp(jpeg)
    .resize({ width: LONGEST_SIDE_PX, height: LONGEST_SIDE_PX, fit: "inside", withoutEnlargement: true })
    .jpeg({ quality: QUALITY })
    .toBuffer();
  return `data:image/jpeg;base64,${small.toString("base64")}`;
}
