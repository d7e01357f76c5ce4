"use client";
/** Long side of a photo as it is sent: enough to see a scratch on a sheath, small enough for a phone at the door. */
const longSide = 2000;

/** The same picture, smaller, drawn anew as JPEG; the file itself where it is small or the browser cannot draw it. */
export const shrinkPhoto = async (file: File, longestBytes: number): Promise<File> => {
  if (file.size <= longestBytes) return file;
  try {
    const picture = await createImageBitmap(file);
    const scale = Math.min(1, longSide / Math.max(picture.width, picture.height));
    const canvas = document.createElement("canvas");
    canvas.width = Math.round(picture.width * scale);
    canvas.height = Math.round(picture.height * scale);
    canvas.getContext("2d")?.drawImage(picture, 0, 0, canvas.width, canvas.height);
    picture.close();
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", 0.85));
    return blob ? new File([blob], "photo.jpg", { type: "image/jpeg" }) : file;
  } catch {
    return file;
  }
};
