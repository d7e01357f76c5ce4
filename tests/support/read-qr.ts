/**
 * Reads a QR code's modules back, after ISO/IEC 18004:2015: versions 1 to 6 (no version information), level M;
 * trusts the modules, so nothing is corrected. Enough to read our own label back without a camera.
 */
export const readQr = (dark: (row: number, column: number) => boolean, size: number): string => {
  const version = (size - 17) / 4;
  // Data codewords of a block and number of blocks at level M (table 9).
  const shapes = [
    [16, 1],
    [28, 1],
    [44, 1],
    [32, 2],
    [43, 2],
    [27, 4],
  ] as const;
  const shape = shapes[version - 1];
  if (!shape) throw new Error(`Version ${version} is not read here`);
  const mask = maskOf(dark);
  const bits: boolean[] = [];
  for (const [row, column] of dataModules(size)) bits.push(dark(row, column) !== mask(row, column));
  const [perBlock, blocks] = shape;
  const codewords = Array.from({ length: perBlock * blocks }, (_, index) =>
    numberOf(bits.slice(index * 8, index * 8 + 8)),
  );
  const data = Array.from({ length: blocks }, (_, block) =>
    codewords.filter((_, index) => index % blocks === block),
  ).flat();
  const stream = data.flatMap((byte) => Array.from({ length: 8 }, (_, bit) => (byte & (128 >> bit)) !== 0));
  return segmentsOf(stream);
};

const alphanumeric = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";

/** Numeric, alphanumeric and byte segments, up to the terminator (7.4). */
const segmentsOf = (stream: readonly boolean[]): string => {
  let at = 0;
  const take = (count: number): number => {
    at += count;
    return numberOf(stream.slice(at - count, at));
  };
  let text = "";
  for (let mode = take(4); mode !== 0 && at < stream.length; mode = take(4)) {
    if (mode === 4) {
      const length = take(8);
      text += Buffer.from(Array.from({ length }, () => take(8))).toString("utf8");
    } else if (mode === 2) {
      let left = take(9);
      for (; left >= 2; left -= 2) {
        const pair = take(11);
        text += alphanumeric[Math.floor(pair / 45)]! + alphanumeric[pair % 45]!;
      }
      if (left === 1) text += alphanumeric[take(6)];
    } else if (mode === 1) {
      let left = take(10);
      for (; left >= 3; left -= 3) text += String(take(10)).padStart(3, "0");
      if (left > 0) text += String(take(left === 2 ? 7 : 4)).padStart(left, "0");
    } else throw new Error(`Mode ${mode} is not read here`);
  }
  return text;
};

const numberOf = (bits: readonly boolean[]): number => bits.reduce((sum, bit) => sum * 2 + (bit ? 1 : 0), 0);

const masks: readonly ((i: number, j: number) => boolean)[] = [
  (i, j) => (i + j) % 2 === 0,
  (i) => i % 2 === 0,
  (_i, j) => j % 3 === 0,
  (i, j) => (i + j) % 3 === 0,
  (i, j) => (Math.floor(i / 2) + Math.floor(j / 3)) % 2 === 0,
  (i, j) => ((i * j) % 2) + ((i * j) % 3) === 0,
  (i, j) => (((i * j) % 2) + ((i * j) % 3)) % 2 === 0,
  (i, j) => (((i + j) % 2) + ((i * j) % 3)) % 2 === 0,
];

/** Format information beside the upper left finder: bits 14 to 10 are level and mask, under the mask 10101. */
const maskOf = (dark: (row: number, column: number) => boolean) => {
  const bits = [0, 1, 2, 3, 4].map((column) => dark(8, column));
  const format = numberOf(bits) ^ 0b10101;
  if (format >> 3 !== 0) throw new Error("Not level M");
  return masks[format & 7]!;
};

const isFunction = (row: number, column: number, size: number): boolean => {
  if (row === 6 || column === 6) return true;
  if (row < 9 && (column < 9 || column >= size - 8)) return true;
  if (row >= size - 8 && column < 9) return true;
  // From version 2 on, one alignment pattern of five by five modules.
  const centre = size - 7;
  return size > 21 && Math.abs(row - centre) <= 2 && Math.abs(column - centre) <= 2;
};

function* dataModules(size: number): Generator<readonly [number, number]> {
  let upward = true;
  for (let right = size - 1; right > 0; right -= 2) {
    if (right === 6) right = 5;
    for (let step = 0; step < size; step += 1) {
      const row = upward ? size - 1 - step : step;
      for (const column of [right, right - 1]) if (!isFunction(row, column, size)) yield [row, column];
    }
    upward = !upward;
  }
}
