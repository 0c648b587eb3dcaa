/** Enough to see a gap of a quarter inch from six feet away. */
const LONGEST_SIDE_PX = 1600;
const QUALITY = 0.82;

/**
 * A photo made small on the device: drawn anew, so that nothing but the picture is left of it. What the camera wrote
 * beside it (place, time, device) does not come along; how it was held does, because it is drawn the right way up.
 */
export async function smallJpeg(file: Blob): Promise<Blob> {
  const picture = await createImageBitmap(file).catch(() => {
    throw new Error("This file is not a picture that this device can read. Choose another one.");
  });
  const scale = Math.min(1, LONGEST_SIDE_PX / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext("2d")?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  return await new Promise((resolve, reject) =>
    canvas.toBlob(
      (blob) => (blob ? resolve(blob) : reject(new Error("This device could not make the photo small."))),
      "image/jpeg",
      QUALITY,
    ),
  );
}
