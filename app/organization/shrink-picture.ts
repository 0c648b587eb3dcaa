/** Enough for a sharp logo on paper: about 300 points an inch at the size it is printed. */
const WIDTH = 800;
const HEIGHT = 240;

/**
 * The picture as a PNG small enough for papers, made by the browser that chose it. What a browser cannot read, it gives
 * back as it is: the server tells what is wrong with it.
 */
export async function shrinkPicture(file: File): Promise<File> {
  try {
    const picture = await createImageBitmap(file);
    const scale = Math.min(1, WIDTH / picture.width, HEIGHT / picture.height);
    if (scale === 1 && file.size < 60_000 && (file.type === "image/png" || file.type === "image/jpeg")) return file;
    const canvas = document.createElement("canvas");
    canvas.width = Math.max(1, Math.round(picture.width * scale));
    canvas.height = Math.max(1, Math.round(picture.height * scale));
    canvas.getContext("2d")?.drawImage(picture, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, "image/png"));
    return blob ? new File([blob], "logo.png", { type: "image/png" }) : file;
  } catch {
    return file;
  }
}
