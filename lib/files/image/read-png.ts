import { crc32, inflateSync } from "node:zlib";

export type ImageSize = { readonly width: number; readonly height: number };

const signature = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
/** Samples of a pixel by colour type, PNG (ISO/IEC 15948) 11.2.2. */
const samples: Readonly<Record<number, number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };

type Chunk = { readonly type: string; readonly data: Buffer };

const chunksOf = (file: Buffer): readonly Chunk[] | string => {
  const chunks: Chunk[] = [];
  let at = signature.length;
  while (at + 12 <= file.length) {
    const length = file.readUInt32BE(at);
    if (at + 12 + length > file.length) return "it is cut short";
    const named = file.subarray(at + 4, at + 8 + length);
    if (crc32(named) !== file.readUInt32BE(at + 8 + length)) return "a part of it is damaged";
    const type = named.toString("latin1", 0, 4);
    chunks.push({ type, data: named.subarray(4) });
    if (type === "IEND") return chunks;
    at += 12 + length;
  }
  return "it is cut short";
};

/** Bytes of the picture before compression: each row with the byte that names its filter. */
const rawLength = (head: Buffer, { width, height }: ImageSize): number => {
  const bits = (samples[head[9] ?? -1] ?? 0) * (head[8] ?? 0) * width;
  return height * (1 + Math.ceil(bits / 8));
};

/** Size of a PNG whose every part is whole; else why not. Adam7 interlacing is not read. */
export const readPng = (bytes: Uint8Array): ImageSize | string => {
  const file = Buffer.from(bytes);
  if (signature.some((byte, index) => file[index] !== byte)) return "it does not begin as a PNG does";
  const chunks = chunksOf(file);
  if (typeof chunks === "string") return chunks;
  const head = chunks[0];
  if (head?.type !== "IHDR" || head.data.length !== 13) return "it has no header";
  const size = { width: head.data.readUInt32BE(0), height: head.data.readUInt32BE(4) };
  if (samples[head.data[9] ?? -1] === undefined) return "its colours are of no known kind";
  if (head.data[12] !== 0) return "it is interlaced";
  const expected = rawLength(head.data, size);
  if (!(expected < 40_000_000)) return "it has too many pixels";
  const packed = Buffer.concat(chunks.filter(({ type }) => type === "IDAT").map(({ data }) => data));
  try {
    // The bound keeps a small file from becoming gigabytes.
    const raw = inflateSync(packed, { maxOutputLength: expected + 1 });
    return raw.length === expected ? size : "its picture is not of its size";
  } catch {
    return "its picture cannot be unpacked";
  }
};
