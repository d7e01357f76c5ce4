/** Bytes of their own: what WebCrypto and pkijs take without asking where the buffer came from. */
export type Bytes = Uint8Array<ArrayBuffer>;

export const copyOf = (bytes: Uint8Array | ArrayBuffer): Bytes => new Uint8Array(bytes);

export const isSame = (one: Uint8Array, other: Uint8Array): boolean =>
  one.length === other.length && one.every((byte, index) => byte === other[index]);

export const toHex = (bytes: Uint8Array): string =>
  Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");

/** undefined where it is no hexadecimal text of whole bytes. */
export const fromHex = (text: string): Bytes | undefined => {
  if (text.length % 2 !== 0 || !/^[0-9a-fA-F]*$/.test(text)) return undefined;
  const bytes = new Uint8Array(text.length / 2);
  for (let index = 0; index < bytes.length; index += 1)
    bytes[index] = Number.parseInt(text.slice(2 * index, 2 * index + 2), 16);
  return bytes;
};

export const toBase64 = (bytes: Uint8Array): string =>
  btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(""));

/** undefined where it is no base64. */
export const fromBase64 = (text: string): Bytes | undefined => {
  try {
    return Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0));
  } catch {
    return undefined;
  }
};

export const joined = (parts: readonly Uint8Array[]): Bytes => {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
};

export const sha256 = async (bytes: Uint8Array): Promise<Bytes> =>
  copyOf(await globalThis.crypto.subtle.digest("SHA-256", copyOf(bytes)));
