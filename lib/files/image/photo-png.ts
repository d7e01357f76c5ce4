import type { ReadPhoto } from "@/lib/domain/sensor/photo";
import { readPng } from "./read-png";

/** What the picture is drawn from, PNG (ISO/IEC 15948) 11.2 and 11.3; texts, times, EXIF and private chunks go. */
const stays = new Set([
  "IHDR",
  "PLTE",
  "IDAT",
  "IEND",
  "tRNS",
  "gAMA",
  "cHRM",
  "sRGB",
  "iCCP",
  "sBIT",
  "pHYs",
]);

/** A PNG whose every part is whole, without the parts that are not its picture; what follows its end is cut off. */
export const photoPng = (bytes: Uint8Array): ReadPhoto | string => {
  const size = readPng(bytes);
  if (typeof size === "string") return size;
  const file = Buffer.from(bytes);
  const kept = [file.subarray(0, 8)];
  let at = 8;
  while (at + 12 <= file.length) {
    const end = at + 12 + file.readUInt32BE(at);
    const type = file.toString("latin1", at + 4, at + 8);
    if (stays.has(type)) kept.push(file.subarray(at, end));
    if (type === "IEND") break;
    at = end;
  }
  return { mediaType: "image/png", ...size, bytes: Uint8Array.from(Buffer.concat(kept)) };
};
