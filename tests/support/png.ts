import { crc32, deflateSync } from "node:zlib";

const chunk = (type: string, data: Buffer): Buffer => {
  const named = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  check.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, check]);
};

export type PngChange = {
  readonly colourType?: number;
  readonly interlace?: number;
  /** Rows that the picture holds, where they are not as many as the header says. */
  readonly rows?: number;
};

/** An invented mark: a grey square, or a faulty one. */
export const png = (width: number, height: number, change: PngChange = {}): Uint8Array => {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, change.colourType ?? 0, 0, 0, change.interlace ?? 0], 8);
  const rows = Buffer.alloc((change.rows ?? height) * (width + 1), 0x80);
  for (let row = 0; row < rows.length; row += width + 1) rows[row] = 0;
  return Uint8Array.from(
    Buffer.concat([
      Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
      chunk("IHDR", head),
      chunk("IDAT", deflateSync(rows)),
      chunk("IEND", Buffer.alloc(0)),
    ]),
  );
};
