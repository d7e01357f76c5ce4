import type { ReadPhoto } from "@/lib/domain/sensor/photo";

type Chunk = { readonly type: string; readonly data: Buffer };

const stays = new Set(["VP8 ", "VP8L", "VP8X", "ALPH", "ICCP"]);

/** Chunks of a RIFF file, each padded to an even length. */
const chunksOf = (file: Buffer): readonly Chunk[] | string => {
  const end = 8 + file.readUInt32LE(4);
  if (end > file.length || end < 20) return "it is cut short";
  const chunks: Chunk[] = [];
  for (let at = 12; at + 8 <= end; ) {
    const length = file.readUInt32LE(at + 4);
    if (at + 8 + length > end) return "it is cut short";
    chunks.push({ type: file.toString("latin1", at, at + 4), data: file.subarray(at + 8, at + 8 + length) });
    at += 8 + length + (length % 2);
  }
  return chunks;
};

/** Size of the picture itself, RFC 6386 9.1 and RFC 9649 3.4. */
const sizeOf = ({ type, data }: Chunk): { readonly width: number; readonly height: number } | null => {
  if (type === "VP8 " && data.length >= 10 && data.readUIntBE(3, 3) === 0x9d012a)
    return { width: data.readUInt16LE(6) & 0x3fff, height: data.readUInt16LE(8) & 0x3fff };
  if (type === "VP8L" && data.length >= 5 && data[0] === 0x2f) {
    const bits = data.readUInt32LE(1);
    return { width: (bits & 0x3fff) + 1, height: ((bits >>> 14) & 0x3fff) + 1 };
  }
  return null;
};

/** Of the extended header: which other chunks follow. Bit 3 EXIF, bit 2 XMP, bit 1 animation (RFC 9649 2.7). */
const withoutMetadataFlags = ({ type, data }: Chunk): Chunk => {
  if (type !== "VP8X" || data.length === 0) return { type, data };
  const flags = Buffer.from(data);
  flags[0] = (flags[0] ?? 0) & ~0b1100;
  return { type, data: flags };
};

const written = ({ type, data }: Chunk): Buffer => {
  const head = Buffer.alloc(8);
  head.write(type, 0, "latin1");
  head.writeUInt32LE(data.length, 4);
  return Buffer.concat([head, data, Buffer.alloc(data.length % 2)]);
};

/** A still WebP without EXIF, XMP and chunks nobody knows. */
export const photoWebp = (bytes: Uint8Array): ReadPhoto | string => {
  const file = Buffer.from(bytes);
  if (file.length < 20) return "it is cut short";
  const chunks = chunksOf(file);
  if (typeof chunks === "string") return chunks;
  if (chunks.some(({ type }) => type === "ANIM" || type === "ANMF")) return "it moves";
  const picture = chunks.find(({ type }) => type === "VP8 " || type === "VP8L");
  const size = picture ? sizeOf(picture) : null;
  if (!size) return "it has no picture";
  const kept = chunks
    .filter(({ type }) => stays.has(type))
    .map(withoutMetadataFlags)
    .map(written);
  const body = Buffer.concat([Buffer.from("WEBP", "latin1"), ...kept]);
  const head = Buffer.alloc(8);
  head.write("RIFF", 0, "latin1");
  head.writeUInt32LE(body.length, 4);
  return { mediaType: "image/webp", ...size, bytes: Uint8Array.from(Buffer.concat([head, body])) };
};
