import type { ImageSize } from "./read-png";

/** Start of frame: baseline and progressive Huffman, ITU-T T.81 table B.1. */
const frames = new Set([0xc0, 0xc1, 0xc2]);

/** Size of a JPEG that ends as one does; else why not. */
export const readJpeg = (bytes: Uint8Array): ImageSize | string => {
  const file = Buffer.from(bytes);
  if (file.readUInt16BE(file.length - 2) !== 0xffd9) return "it is cut short";
  let size: ImageSize | null = null;
  let at = 2;
  while (at + 4 <= file.length) {
    if (file[at] !== 0xff) return "a part of it is damaged";
    const marker = file[at + 1] ?? 0;
    const length = file.readUInt16BE(at + 2);
    if (length < 2 || at + 2 + length > file.length) return "it is cut short";
    if (frames.has(marker)) {
      if (length < 8) return "it has no size";
      size = { width: file.readUInt16BE(at + 7), height: file.readUInt16BE(at + 5) };
    }
    // From the start of scan on, picture follows.
    if (marker === 0xda) return size ?? "it has no size";
    at += 2 + length;
  }
  return "it has no picture";
};
