import { crc32, deflateSync, inflateSync } from "node:zlib";

/** A picture in shades of grey, row by row, 0 black to 255 white. */
export type GreyImage = { readonly width: number; readonly height: number; readonly pixels: Uint8Array };

/** A binary PGM, as pdftoppm writes it: "P5", width, height, 255, then the pixels. */
export const readPgm = (bytes: Buffer): GreyImage => {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 64).toString("latin1"));
  if (!head) throw new Error("not a picture in shades of grey");
  const [all, width, height] = head;
  return {
    width: Number(width),
    height: Number(height),
    pixels: new Uint8Array(bytes.subarray(all.length)),
  };
};

const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

const chunk = (type: string, data: Buffer): Buffer => {
  const named = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  check.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, check]);
};

/** As a PNG with unfiltered rows: small enough for pages of text, and read back by `readGreyPng` alone. */
export const writeGreyPng = ({ width, height, pixels }: GreyImage): Buffer => {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 0, 0, 0, 0], 8);
  const rows = Buffer.alloc(height * (width + 1));
  for (let row = 0; row < height; row += 1)
    rows.set(pixels.subarray(row * width, (row + 1) * width), row * (width + 1) + 1);
  const data = deflateSync(rows, { level: 9 });
  return Buffer.concat([signature, chunk("IHDR", head), chunk("IDAT", data), chunk("IEND", Buffer.alloc(0))]);
};

export const readGreyPng = (bytes: Buffer): GreyImage => {
  if (!bytes.subarray(0, 8).equals(signature)) throw new Error("not a PNG");
  const [width, height] = [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
  const at = bytes.indexOf("IDAT");
  const rows = inflateSync(bytes.subarray(at + 4, at + 4 + bytes.readUInt32BE(at - 4)));
  const pixels = new Uint8Array(width * height);
  for (let row = 0; row < height; row += 1) {
    const start = row * (width + 1);
    if (rows[start] !== 0) throw new Error("a filtered row: not one of our own pictures");
    pixels.set(rows.subarray(start + 1, start + 1 + width), row * width);
  }
  return { width, height, pixels };
};

/**
 * The share of pixels that differ by more than a tenth of the way from ink to paper after each is averaged with its
 * eight neighbours: another version of the rasteriser smooths edges otherwise and passes, a line that moved does not.
 */
export const shareOfDifferingPixels = (one: GreyImage, other: GreyImage): number => {
  if (one.width !== other.width || one.height !== other.height) return 1;
  const { width, height } = one;
  let differing = 0;
  const around = ({ pixels }: GreyImage, at: number): number => {
    let sum = 0;
    for (const row of [at - width, at, at + width])
      sum += (pixels[row - 1] ?? 0) + (pixels[row] ?? 0) + (pixels[row + 1] ?? 0);
    return sum / 9;
  };
  for (let row = 1; row < height - 1; row += 1)
    for (let column = 1; column < width - 1; column += 1) {
      const at = row * width + column;
      if (Math.abs(around(one, at) - around(other, at)) > 24) differing += 1;
    }
  return differing / (width * height);
};

/** Of each pixel, by how much it differs beyond what is tolerated; summed over all that stand above and left of it. */
const summedExcess = (one: GreyImage, other: GreyImage, tolerated: number): Float64Array => {
  const { width, height } = one;
  const sums = new Float64Array((width + 1) * (height + 1));
  for (let row = 0; row < height; row += 1) {
    let line = 0;
    for (let column = 0; column < width; column += 1) {
      const at = row * width + column;
      line += Math.max(0, Math.abs((one.pixels[at] ?? 0) - (other.pixels[at] ?? 0)) - tolerated);
      const below = (row + 1) * (width + 1) + column + 1;
      sums[below] = (sums[below - width - 1] ?? 0) + line;
    }
  }
  return sums;
};

const block = { side: 12, step: 4, tolerated: 24 } as const;

/**
 * The difference of the block of 12 × 12 pixels that differs most: shades of grey beyond 24, on average over the block. A
 * block is as large as a digit of a table at 110 dots per inch, so that one digit counts as much on a full page as on an
 * empty one.
 */
export const strongestDifference = (one: GreyImage, other: GreyImage): number => {
  if (one.width !== other.width || one.height !== other.height) return 255;
  const { width, height } = one;
  const sums = summedExcess(one, other, block.tolerated);
  const sumTo = (row: number, column: number): number => sums[row * (width + 1) + column] ?? 0;
  let strongest = 0;
  for (let row = 0; row + block.side <= height; row += block.step)
    for (let column = 0; column + block.side <= width; column += block.step) {
      const [below, right] = [row + block.side, column + block.side];
      const inside = sumTo(below, right) - sumTo(row, right) - sumTo(below, column) + sumTo(row, column);
      strongest = Math.max(strongest, inside);
    }
  return strongest / block.side ** 2;
};
