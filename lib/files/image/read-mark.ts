import { readJpeg } from "./read-jpeg";
import { readPng } from "./read-png";

export type MarkImage = {
  readonly mediaType: "image/png" | "image/jpeg";
  readonly width: number;
  readonly height: number;
};

export type MarkOutcome =
  | { readonly ok: true; readonly image: MarkImage }
  | { readonly ok: false; readonly message: string };

export const markLimitBytes = 400_000;
const mostPixels = 3000;

const refuse = (message: string): MarkOutcome => ({ ok: false, message });

/**
 * An accreditation mark as it came: PNG or JPEG, whole and of a size that prints. What a program would have to run or
 * fetch (SVG, PDF) is none. A signed certificate must render for ever, so what is damaged is refused here.
 */
export const readMark = (bytes: Uint8Array): MarkOutcome => {
  if (bytes.length === 0) return refuse("The file is empty. Choose the image of the mark.");
  if (bytes.length > markLimitBytes)
    return refuse(
      `The image has ${bytes.length} bytes; at most ${markLimitBytes} are taken. Save it smaller.`,
    );
  const isPng = bytes[0] === 0x89 && bytes[1] === 0x50;
  const isJpeg = bytes[0] === 0xff && bytes[1] === 0xd8;
  if (!isPng && !isJpeg) return refuse("This is neither a PNG nor a JPEG. Save the mark as one of them.");
  const read = isPng ? readPng(bytes) : readJpeg(bytes);
  if (typeof read === "string") return refuse(`The image cannot be used: ${read}. Save it anew.`);
  const { width, height } = read;
  if (width < 1 || height < 1 || width > mostPixels || height > mostPixels)
    return refuse(`The image has ${width} × ${height} pixels; at most ${mostPixels} each way are taken.`);
  return { ok: true, image: { mediaType: isPng ? "image/png" : "image/jpeg", width, height } };
};
