const alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

/** RFC 4648, 6, without padding, as authenticators take it. */
export const base32 = (bytes: Uint8Array): string => {
  const bits = [...bytes].map((byte) => byte.toString(2).padStart(8, "0")).join("");
  const groups = bits.match(/.{1,5}/g) ?? [];
  return groups.map((group) => alphabet[Number.parseInt(group.padEnd(5, "0"), 2)]).join("");
};

/** The bytes again, spaces and case aside; null where it is no key. */
export const secretOfKey = (key: string): Uint8Array | null => {
  const signs = [...key.replaceAll(" ", "").toUpperCase()];
  const values = signs.map((sign) => alphabet.indexOf(sign));
  if (values.length === 0 || values.includes(-1)) return null;
  const bits = values.map((value) => value.toString(2).padStart(5, "0")).join("");
  return Uint8Array.from(bits.match(/.{8}/g) ?? [], (byte) => Number.parseInt(byte, 2));
};

/**
 * What an authenticator reads from the picture: the laboratory, whose account it is, and the secret. The form is common
 * practice among authenticators, without a standard.
 */
export const keyUri = (secret: Uint8Array, account: string, issuer: string): string => {
  const label = `${encodeURIComponent(issuer)}:${encodeURIComponent(account)}`;
  const query = `secret=${base32(secret)}&issuer=${encodeURIComponent(issuer)}`;
  return `otpauth://totp/${label}?${query}&algorithm=SHA1&digits=6&period=30`;
};
