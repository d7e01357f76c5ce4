import { photoLimitBytes, type ReadPhoto } from "@/lib/domain/sensor/photo";
import { photoJpeg } from "./photo-jpeg";
import { photoPng } from "./photo-png";
import { photoWebp } from "./photo-webp";

export type PhotoOutcome =
  | { readonly ok: true; readonly photo: ReadPhoto }
  | { readonly ok: false; readonly message: string };

const mostPixels = 50_000_000;

const refuse = (message: string): PhotoOutcome => ({ ok: false, message });

const readerOf = (bytes: Uint8Array): ((bytes: Uint8Array) => ReadPhoto | string) | null => {
  const head = Buffer.from(bytes.subarray(0, 12)).toString("latin1");
  if (head.startsWith("\xff\xd8\xff")) return photoJpeg;
  if (head.startsWith("\x89PNG\r\n\x1a\n")) return photoPng;
  if (head.startsWith("RIFF") && head.endsWith("WEBP")) return photoWebp;
  return null;
};

/** A photo by its content, never by its name: JPEG, PNG or WebP, whole, of a size a camera makes. */
export const readPhoto = (bytes: Uint8Array): PhotoOutcome => {
  if (bytes.length === 0) return refuse("The file is empty. Take or choose the photo again.");
  if (bytes.length > photoLimitBytes)
    return refuse(
      `The photo has ${bytes.length} bytes; at most ${photoLimitBytes} are taken. Save it smaller.`,
    );
  const reader = readerOf(bytes);
  if (!reader)
    return refuse("This is no JPEG, PNG or WebP. Take the photo in one of them, or save it as JPEG.");
  const read = reader(bytes);
  if (typeof read === "string") return refuse(`The photo cannot be used: ${read}. Save it anew as JPEG.`);
  const { width, height } = read;
  if (width < 1 || height < 1 || width * height > mostPixels)
    return refuse(
      `The photo has ${width} × ${height} pixels; at most ${mostPixels} are taken. Save it smaller.`,
    );
  return { ok: true, photo: read };
};
