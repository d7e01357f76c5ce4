const isLittleEndian = new Uint8Array(new Uint16Array([1]).buffer)[0] === 1;

const reverseEach8 = (bytes: Uint8Array): void => {
  for (let at = 0; at < bytes.byteLength; at += 8) bytes.subarray(at, at + 8).reverse();
};

/** Readings as they are stored: IEC 60559 binary64, little-endian, bit for bit (−0 and denormals included). */
export const bytesOfFloats = (floats: Float64Array): Uint8Array<ArrayBuffer> => {
  const bytes = new Uint8Array(floats.byteLength);
  bytes.set(new Uint8Array(floats.buffer, floats.byteOffset, floats.byteLength));
  if (!isLittleEndian) reverseEach8(bytes);
  return bytes;
};

/** Throws if the bytes are no whole number of values: then the store is damaged. */
export const floatsOfBytes = (bytes: Uint8Array): Float64Array<ArrayBuffer> => {
  if (bytes.byteLength % 8 !== 0)
    throw new RangeError(`${bytes.byteLength} bytes are no whole number of float64.`);
  // A copy: a Float64Array must begin at a multiple of 8, and what a driver hands out need not.
  const copy = new Uint8Array(bytes);
  if (!isLittleEndian) reverseEach8(copy);
  return new Float64Array(copy.buffer);
};

/** Polarity: one signed byte per reading, +1 or −1. */
export const bytesOfPolarity = (polarity: Int8Array): Uint8Array<ArrayBuffer> => {
  const bytes = new Uint8Array(polarity.byteLength);
  bytes.set(new Uint8Array(polarity.buffer, polarity.byteOffset, polarity.byteLength));
  return bytes;
};

export const polarityOfBytes = (bytes: Uint8Array): Int8Array<ArrayBuffer> =>
  new Int8Array(new Uint8Array(bytes).buffer);
