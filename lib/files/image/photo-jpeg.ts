import type { ReadPhoto } from "@/lib/domain/sensor/photo";

/** Start of frame: baseline and progressive Huffman, ITU-T T.81 table B.1. */
const frames = new Set([0xc0, 0xc1, 0xc2]);

/**
 * Application segments that stay: JFIF (APP0), the colour profile (APP2 named ICC_PROFILE) and the colour transform
 * (APP14). All others and comments go: EXIF with place, time and camera, XMP, thumbnails, maker's notes.
 */
const staysSegment = (marker: number, body: Buffer): boolean => {
  if (marker === 0xfe) return false;
  if (marker < 0xe0 || marker > 0xef) return true;
  if (marker === 0xe2) return body.toString("latin1", 0, 11) === "ICC_PROFILE";
  return marker === 0xee || (marker === 0xe0 && body.toString("latin1", 0, 4) === "JFIF");
};

/** Which way up the camera was held, TIFF tag 0x0112 of the EXIF; 1 where it does not say. */
const orientationOf = (body: Buffer): number => {
  if (body.toString("latin1", 0, 6) !== "Exif\0\0" || body.length < 20) return 1;
  const tiff = body.subarray(6);
  const isLittle = tiff.toString("latin1", 0, 2) === "II";
  const word = (at: number) =>
    at + 2 > tiff.length ? 0 : isLittle ? tiff.readUInt16LE(at) : tiff.readUInt16BE(at);
  const long = (at: number) =>
    at + 4 > tiff.length ? 0 : isLittle ? tiff.readUInt32LE(at) : tiff.readUInt32BE(at);
  const first = long(4);
  const count = Math.min(word(first), 200);
  for (let entry = 0; entry < count; entry += 1) {
    const at = first + 2 + entry * 12;
    if (word(at) === 0x0112) return word(at + 8) >= 1 && word(at + 8) <= 8 ? word(at + 8) : 1;
  }
  return 1;
};

/** An EXIF segment that holds the orientation and nothing else, so that the picture still stands upright. */
const orientationSegment = (orientation: number): Buffer => {
  const tiff = Buffer.from("4d4d002a00000008000101120003000000010000000000000000", "hex");
  tiff.writeUInt16BE(orientation, 18);
  const body = Buffer.concat([Buffer.from("Exif\0\0", "latin1"), tiff]);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([head, body]);
};

/** Where the picture's coded bytes end: at a marker that is no stuffed byte and no restart. */
const scanEnd = (file: Buffer, from: number): number => {
  let at = from;
  while (at + 1 < file.length) {
    const next = file[at + 1] ?? 0;
    if (file[at] === 0xff && next !== 0 && next !== 0xff && (next < 0xd0 || next > 0xd7)) return at;
    at += 1;
  }
  return file.length;
};

type Size = { width: number; height: number };

/** A JPEG without what tells where, when and with what it was taken; what follows its end is cut off. */
export const photoJpeg = (bytes: Uint8Array): ReadPhoto | string => {
  const file = Buffer.from(bytes);
  const kept: Buffer[] = [];
  let size: Size | null = null;
  let orientation = 1;
  let hasScan = false;
  let at = 2;
  while (at + 4 <= file.length || file[at + 1] === 0xd9) {
    if (file[at] !== 0xff) return "a part of it is damaged";
    const marker = file[at + 1] ?? 0;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker === 0xd9) {
      if (!size || !hasScan) return "it has no picture";
      const upright = orientation === 1 ? [] : [orientationSegment(orientation)];
      const whole = [Buffer.from([0xff, 0xd8]), ...upright, ...kept, Buffer.from([0xff, 0xd9])];
      return { mediaType: "image/jpeg", ...size, bytes: Uint8Array.from(Buffer.concat(whole)) };
    }
    const length = file.readUInt16BE(at + 2);
    if (length < 2 || at + 2 + length > file.length) return "it is cut short";
    const body = file.subarray(at + 4, at + 2 + length);
    if (frames.has(marker)) {
      if (length < 8) return "it has no size";
      size = { width: file.readUInt16BE(at + 7), height: file.readUInt16BE(at + 5) };
    } else if (marker >= 0xc3 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker))
      return "it is packed in a way that is hardly used";
    if (marker === 0xe1 && orientation === 1) orientation = orientationOf(body);
    const end = marker === 0xda ? scanEnd(file, at + 2 + length) : at + 2 + length;
    hasScan ||= marker === 0xda;
    if (staysSegment(marker, body)) kept.push(file.subarray(at, end));
    at = end;
  }
  return "it is cut short";
};
